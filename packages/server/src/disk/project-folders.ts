/** Where the built web app and the sample farm lie, beside this program: the same from its sources and from its bundles. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The nearest folder above this file that holds the project; null when the program was copied out of it. */
function projectFolder(): string | null {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    if (existsSync(join(at, 'packages', 'server', 'package.json'))) return at;
    if (dirname(at) === at) return null;
  }
}

export function webFolder(): string | null {
  return ifThere('packages', 'web', 'dist');
}

export function sampleFolder(): string | null {
  return ifThere('demo');
}

function ifThere(...path: readonly string[]): string | null {
  const project = projectFolder();
  const folder = project === null ? null : join(project, ...path);
  return folder !== null && existsSync(folder) ? folder : null;
}
