/** The tables of docs/farm-folder.md, made from the same columns that read and write the files. */
import * as z from 'zod';
import { type AnyTable, tables } from '../rows/tables.ts';
import { farmJson } from './farm-json.ts';

/** One section a file, as Markdown. */
export function describeFolder(): string {
  return [describeFarmJson(), ...tables.map(describeTable)].join('\n');
}

function describeFarmJson(): string {
  return [
    '### farm.json',
    '',
    'What the farm is called, where it lies and how it counts.',
    '',
    '| Key | Meaning |',
    '| --- | --- |',
    ...keysOf(farmJson, ''),
    '',
  ].join('\n');
}

function keysOf(shape: z.ZodObject, before: string): string[] {
  return Object.entries(shape.shape).flatMap(([key, one]) => {
    const path = `${before}${key}`;
    const inner = innermost(one);
    const must = one instanceof z.ZodOptional ? '' : '. **Must be given.**';
    return [
      `| \`${path}\` | ${meaningOf(one)}${must} |`,
      ...(inner instanceof z.ZodObject ? keysOf(inner, `${path}.`) : []),
    ];
  });
}

/** The words nearest the outside: a key that may be left out keeps those of what it wraps. */
function meaningOf(shape: unknown): string {
  const said = (shape as z.ZodType).description;
  if (said !== undefined) return said;
  return shape instanceof z.ZodOptional || shape instanceof z.ZodNullable ? meaningOf(shape.unwrap()) : '';
}

function innermost(shape: unknown): z.ZodType {
  return shape instanceof z.ZodOptional || shape instanceof z.ZodNullable
    ? innermost(shape.unwrap())
    : (shape as z.ZodType);
}

function describeTable({ file, about, columns, growing }: AnyTable): string {
  const rows = Object.values(columns).map((column) => {
    const join = column.takes === 'one' ? ' *or* ' : ', ';
    const headings = column.headings.map((one) => `\`${one.name}\``).join(join);
    const also = column.alsoCalled.length === 0 ? '' : ` (also \`${column.alsoCalled.join('`, `')}\`)`;
    const holds = [...new Set(column.headings.map((one) => one.holds))].join(' *or* ');
    return `| ${headings}${also} | ${holds} | ${column.meaning}${column.required ? '. **Must be given.**' : ''} |`;
  });
  const more =
    growing === undefined ? [] : [`| \`${growing.beginning}…\` | number | for each ${growing.of}, by its id |`];
  return [
    `### ${file}`,
    '',
    about,
    '',
    '| Column | Holds | Meaning |',
    '| --- | --- | --- |',
    ...rows,
    ...more,
    '',
  ].join('\n');
}
