// Finds a Chromium to run the browser tests in, in a fixed order, and says why when there is none.
//
// 1 LEYWRIGHT_BROWSER · 2 on Linux x64 the packed Chromium that npm installed, which brings its own libraries and fonts ·
// 3 an installed Chrome or Edge · 4 a Chromium from the system's packages.
import { accessSync, constants, existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';

export type BrowserFound =
  | { readonly kind: 'found'; readonly executable: string; readonly environment: Readonly<Record<string, string>> }
  | { readonly kind: 'none'; readonly reason: string };

const PACKED_VERSION = '147.0.0';

const installedPlaces: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: [
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/opt/google/chrome/chrome',
    '/usr/bin/microsoft-edge',
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/snap/bin/chromium',
  ],
  darwin: [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
};

/** The browser the tests run in. Unpacks the packed one on its first call; later calls find it in the temporary folder. */
export async function findBrowser(): Promise<BrowserFound> {
  const named = process.env['LEYWRIGHT_BROWSER'];
  if (named !== undefined && named !== '') {
    if (isExecutable(named)) return { kind: 'found', executable: named, environment: {} };
    return {
      kind: 'none',
      reason: `LEYWRIGHT_BROWSER says ${named}, and there is no program to run there. Put its path right.`,
    };
  }
  const packed = await packedBrowser();
  if (packed.kind === 'found') return packed;

  const installed = (installedPlaces[process.platform] ?? []).find(isExecutable);
  if (installed !== undefined) return { kind: 'found', executable: installed, environment: {} };
  return {
    kind: 'none',
    reason: `There is no browser to test in (${packed.reason}). Install Chrome or Chromium, or set LEYWRIGHT_BROWSER to the path of one.`,
  };
}

async function packedBrowser(): Promise<BrowserFound> {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    return { kind: 'none', reason: 'the packed one is for Linux on x64' };
  }
  const folder = join(tmpdir(), `leywright-chromium-${PACKED_VERSION}-${userInfo().uid}`);
  try {
    if (!existsSync(join(folder, 'chromium'))) await unpackInto(folder);
  } catch (error) {
    return {
      kind: 'none',
      reason: `the packed one could not be unpacked: ${error instanceof Error ? error.message : error}`,
    };
  }
  const environment = {
    LD_LIBRARY_PATH: [join(folder, 'al2023', 'lib'), process.env['LD_LIBRARY_PATH']].filter(Boolean).join(':'),
    FONTCONFIG_PATH: join(folder, 'fonts'),
  };
  return { kind: 'found', executable: join(folder, 'chromium'), environment };
}

/**
 * The package unpacks into the temporary folder file by file and takes a half-written file for a finished one. So it unpacks
 * into a draft folder of this process, which gets its real name in one step when everything is there.
 */
async function unpackInto(folder: string): Promise<void> {
  const draft = `${folder}.${process.pid}`;
  mkdirSync(draft, { recursive: true });
  const before = { ...process.env };
  process.env['TMPDIR'] = draft;
  process.env['AWS_EXECUTION_ENV'] = 'AWS_Lambda_nodejs22.x'; // makes the package unpack its own system libraries too
  try {
    const { default: packed } = await import('@sparticuz/chromium');
    await packed.executablePath();
    // Its own list of font folders names /tmp outright; this one names where the fonts really are.
    writeFileSync(join(draft, 'fonts', 'fonts.conf'), fontsConf(folder));
    try {
      renameSync(draft, folder);
    } catch (error) {
      if (!existsSync(join(folder, 'chromium'))) throw error; // another run was quicker, and that is as good
    }
  } finally {
    for (const name of ['TMPDIR', 'AWS_EXECUTION_ENV', 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH', 'HOME']) {
      if (before[name] === undefined) delete process.env[name];
      else process.env[name] = before[name];
    }
    rmSync(draft, { recursive: true, force: true });
  }
}

function fontsConf(folder: string): string {
  const listed = readdirSync(join('/', 'usr', 'share')).includes('fonts') ? '<dir>/usr/share/fonts</dir>' : '';
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${join(folder, 'fonts')}</dir>${listed}<cachedir>${join(folder, 'fonts-cache')}</cachedir></fontconfig>
`;
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
