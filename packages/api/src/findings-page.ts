/** docs/findings.md, written from the words themselves so that page and screen say the same. */
import { findingCodes } from '@leywright/planner';
import { wordTables } from './words/tables.ts';

const head = `# Findings

Everything Leywright finds on a farm, by code. _To put right_ is counted in the head of every page; _worth a look_ and _worth knowing_ are
listed under it. Each finding names its place and its figures and offers what could be done. Words in braces stand for those figures.
This page is written from the program's own words: change them in \`packages/api/src/words\`, then run \`npx tsx scripts/write-schema.ts\`.
`;

export function findingsPage(): string {
  const words = wordTables['en-GB'].findings;
  const parts = findingCodes.map((code) => {
    const { title, sentence, cause, remedy } = words[code];
    return `## ${code}\n\n**${title}.** ${plain(sentence)}\n\n_Why it matters._ ${cause}\n\n_What can be done._ ${remedy}\n`;
  });
  return [head, ...parts].join('\n');
}

/** Without the marks of optional parts and of ways to write a figure. */
function plain(template: string): string {
  return template.replaceAll(/[[\]]/g, '').replaceAll(/\{([A-Za-z0-9]+):[a-z-]+\}/g, '{$1}');
}
