import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'oxc-parser';
import { describe, expect, test } from 'vitest';
import { filesUnder, isNode, projectFolder, type SyntaxNode, walk } from './law/read-tree.ts';

/** Words that must not reach a screen, each with the word we say instead. docs/words.md has the reasons. */
const banned: readonly (readonly [RegExp, string])[] = [
  [/\bink(ed|s)? it\b|\bin ink\b|\binked\b/i, 'agree it, agreed'],
  [/\bred letters?\b/i, 'to put right'],
  [/\bspells?\b(?! of)/i, 'stand (a dry spell of weather may be said as "spell of …")'],
  [/\bbooked\b/i, 'recorded'],
  [/\brub(s|bed)? (it )?out\b/i, 'throw away (a draft), clear (a key)'],
  [/\bput (it )?in the book\b/i, 'record it'],
  [/\b(saw|did) something\b/i, 'I saw…, I did…'],
  [/\bshelved\b/i, 'striped'],
  [/\bmake it up\b/i, 'ways to fill it'],
  [/\b(pegs?|twine|knots?)\b/i, 'mark, line, record'],
  [/\bthread\b/i, 'trace'],
  [/\bpaused\b/i, 'away this week'],
  [/\bswap(s|ped|ping)?\b/i, '"without beetroot, leeks instead"'],
  [/\bfriends?\b|\bfriendly insects?\b/i, 'natural enemy, helper'],
  [/\bmiddle box\b/i, 'medium box'],
  [/\bpermission needed\b/i, 'the local legal term: derogation, authorisation, documented search'],
  [/\bwhiskers?\b/i, 'the line shows where 8 years out of 10 fall'],
  [/\b8 years in 10\b/i, '8 years out of 10'],
  [/\b\d+ in 1,?000 a week\b/i, 'a share, as in 1.1 % a week'],
  [/\bunder the band\b/i, 'below the target range'],
  [/\bfail-on\b/i, '--stop-at'],
  [/\bdashboard\b/i, 'the name of the place'],
  [/\binventory\b/i, 'in store'],
  [/\bfield view\b/i, 'Ground'],
  [/\btasks?\b/i, 'job'],
  [/\bsuccessfully\b|\bplease\b|\boops\b/i, 'leave it out'],
  [/!(?=\s|$)/, 'end with a full stop'],
];

interface Phrase {
  readonly path: string;
  readonly line: number;
  readonly text: string;
}

/**
 * What may be read on a screen: text between tags, strings with a space in them, labels for those who listen.
 * Names in code (twine as a colour's name) are no words on a screen.
 */
function phrasesOf(path: string, source: string): readonly Phrase[] {
  const { program } = parseSync(path, source);
  const phrases: Phrase[] = [];
  const add = (text: unknown, at: number) => {
    if (typeof text !== 'string' || text.trim() === '') return;
    phrases.push({ path, line: source.slice(0, at).split('\n').length, text: text.replace(/\s+/g, ' ').trim() });
  };
  walk(program as unknown as SyntaxNode, (node, parent) => {
    if (node.type === 'JSXText') add(node['value'], node.start);
    if (node.type === 'TemplateElement') add((node['value'] as { cooked?: string }).cooked, node.start);
    if (node.type !== 'Literal' || typeof node['value'] !== 'string') return;
    if (isCodeWord(node, parent)) return;
    add(node['value'], node.start);
  });
  return phrases;
}

const spokenAttributes = /^(aria-label|aria-description|title|alt|placeholder|label|summary)$/;

function isCodeWord(node: SyntaxNode, parent: SyntaxNode | null): boolean {
  if (parent === null || /^(Import|Export|TSLiteral|TSImport)/.test(parent.type)) return true;
  if (parent.type === 'JSXAttribute') {
    const name = (parent['name'] as { name?: unknown }).name;
    return !(typeof name === 'string' && spokenAttributes.test(name));
  }
  if (isNode(parent) && parent['key'] === node) return true;
  const text = String(node['value']);
  return !/\s/.test(text) && !/^[A-Z]/.test(text); // one small word is a code, a class or a kind
}

function offencesIn(phrases: readonly Phrase[]): readonly string[] {
  return phrases.flatMap(({ path, line, text }) =>
    banned
      .filter(([word]) => word.test(text))
      .map(([word, instead]) => `${path}:${line}  "${text.slice(0, 100)}" ${word}\n    say: ${instead}`),
  );
}

const onScreen = ['packages/web/src', 'packages/api/src/words']
  .flatMap((folder) => filesUnder(folder))
  .filter((path) => /\.tsx?$/.test(path));

describe('words on the screen', () => {
  test('none of the words we gave up is on a screen', () => {
    const offences = offencesIn(
      onScreen.flatMap((path) => phrasesOf(path, readFileSync(join(projectFolder, path), 'utf8'))),
    );
    expect(offences.length, `\n${offences.join('\n')}\n`).toBe(0);
  });

  test.for([
    ['<p>Ink it in</p>', 1],
    ["const t = 'Rub out 2 changes';", 1],
    ['const t = `Put in the book: ${n}`;', 1],
    ['<button aria-label="Open the dashboard" />', 1],
    ["const t = { title: 'Inventory' };", 1],
    ['<p>Saved!</p>', 1],
    ['<line className="twine peg" />', 0],
    ["const colour = 'twine'; import './red letter.css';", 0],
    ['<p>3 to put right. A dry spell of two weeks.</p>', 0],
    ['const ok = !open; const t = `${a} != ${b}`;', 0],
  ] as const)('%s', ([source, count]) => {
    expect(offencesIn(phrasesOf('a.tsx', source))).toHaveLength(count);
  });
});
