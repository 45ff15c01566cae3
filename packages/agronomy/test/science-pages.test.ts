import { readFileSync } from 'node:fs';
import { runCheckTable } from '@leywright/agronomy';
import { describe, expect, test } from 'vitest';
import { readChecks } from './read-checks.ts';
import { noReferenceRuns, referenceRun } from './reference-runs.ts';

/** Each subject's page, by the first letters of its checks' ids. */
const pages: Readonly<Record<string, string>> = {
  et: 'reference-evapotranspiration',
  xe: 'reference-evapotranspiration',
  wb: 'crop-water',
  xw: 'crop-water',
  dl: 'day-length',
  xd: 'day-length',
  gd: 'thermal-time',
  xg: 'thermal-time',
  rc: 'carbon',
  hu: 'carbon',
  xr: 'carbon',
  xh: 'carbon',
  n: 'mineral-nitrogen',
  nd: 'mineral-nitrogen',
  dn: 'mineral-nitrogen',
  vo: 'mineral-nitrogen',
  xn: 'mineral-nitrogen',
  pk: 'phosphate-and-potash',
  xp: 'phosphate-and-potash',
  li: 'lime-and-small-nutrients',
  st: 'soil-temperature',
  xt: 'soil-temperature',
  wg: 'drawn-weather',
  xv: 'drawn-weather',
  cc: 'canopy',
  xc: 'canopy',
  hr: 'pests',
  bl: 'pests',
  xo: 'pests',
  sh: 'shelter',
  ne: 'shelter',
  xs: 'shelter',
};
const read = (page: string) => readFileSync(new URL(`../../../docs/science/${page}.md`, import.meta.url), 'utf8');
const rows = ['science.csv', 'soil.csv', 'more.csv', 'pests.csv'].flatMap((file) =>
  readChecks(file).map((row) => ({ id: '', inputs: '', expected: '', tolerance: '', ...row })),
);
/** id, model, distance and allowance of each line of a page's table of checks. */
const listed = new Map(
  [...new Set(Object.values(pages))].flatMap((page) =>
    [...read(page).matchAll(/^\| (\S+) \| (\S+) \| (\S+) \| [^|]+\|$/gm)].map(
      ([, id = '', model = '', distance = '']) => [id, { page, model, distance }] as const,
    ),
  ),
);

describe('a page of the science', () => {
  test.for([...new Set(Object.values(pages))])('%s says idea, checks, limits and what your own figures do', (page) => {
    for (const part of ['**Idea.**', '**Checks', '**Limits.**', '**Your own.**', '## Each check'])
      expect(read(page)).toContain(part);
  });

  test.for(rows)('lists $id with the distance that is really reached', (row, { skip }) => {
    const line = listed.get(row.id);
    expect(line?.page, row.id).toBe(pages[row.id.split('-')[0] ?? '']);
    expect(line?.model).toBe((JSON.parse(row.inputs) as { readonly fn: string }).fn);
    if (row.inputs.includes('"file"')) skip(noReferenceRuns !== null, noReferenceRuns ?? '');
    const [checked] = runCheckTable([row], referenceRun);
    const reached = Math.max(0, ...Object.values(checked?.off ?? {}).filter((off) => off !== null));
    // A hair of binary arithmetic may fall either way on another machine.
    const said = line?.distance === 'same' ? 0 : Number(line?.distance);
    expect(reached).toBeLessThanOrEqual(said * 1.01 + 1e-9);
    expect(said).toBeLessThanOrEqual(reached * 1.3 + 1e-9);
  });

  test('lists no check that is not held here', () => {
    const known = new Set(rows.map((row) => row.id));
    expect([...listed.keys()].filter((id) => !known.has(id) && /-\d+$/.test(id))).toEqual([]);
  });
});
