import { expect, test } from 'vitest';
import { readFarmFolder } from '../src/index.ts';
import { known } from './known.ts';

function read(files: Record<string, string>, more = '') {
  return readFarmFolder(
    new Map([
      ['farm.json', `{"name":"Garth","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England"}${more}}`],
      ['plots.csv', 'id,gross_ha,bed_count\na,0.5,10\nb,0.4,\n'],
      ...Object.entries(files),
    ]),
    known,
  );
}

test('a stand may name its beds, and the plot’s bed count says where that is', () => {
  const { farm } = read({
    'history.csv': 'plot,what,sown_on,to,beds\na,kale,2026-05-01,2026-10-31,3-5\na,leek-mid,2026-05-01,2026-10-31,10\n',
  });
  expect(farm?.stands.map((stand) => stand.span)).toEqual([
    { fromShare: 0.2, toShare: 0.5 },
    { fromShare: 0.9, toShare: 1 },
  ]);
});

test('beds that are not there, and beds of a plot that has no numbers, are told', () => {
  const { problems } = read({
    'history.csv':
      'plot,what,sown_on,to,beds\na,kale,2026-05-01,2026-10-31,8-12\nb,kale,2026-05-01,2026-10-31,1\na,kale,2025-05-01,2025-10-31,5-3\n',
  });
  expect(problems.map(({ code, line, nearest }) => [code, line, nearest[0] ?? null])).toEqual([
    ['beds-outside', 4, '3-5'],
    ['beds-outside', 2, '8-10'],
    ['beds-unknown', 3, null],
  ]);
});

test('half plots given by share alone lie side by side in the order of their rows, and later ones start again from the left', () => {
  const { farm } = read({
    'history.csv':
      'id,plot,what,sown_on,to,share\nk,a,kale,2026-05-01,2026-10-31,0.5\nl,a,leek-mid,2026-06-01,2026-12-01,50%\nc,a,carrot-maincrop,2027-05-01,2027-10-31,0.25\n',
  });
  expect(
    Object.fromEntries(farm?.stands.map((stand) => [stand.id, [stand.span.fromShare, stand.span.toShare]]) ?? []),
  ).toEqual({ k: [0, 0.5], l: [0.5, 1], c: [0, 0.25] });
});

test('shares that add up to more than the plot are told', () => {
  const { problems } = read({
    'history.csv':
      'plot,what,sown_on,to,share\na,kale,2026-05-01,2026-10-31,0.5\na,leek-mid,2026-06-01,2026-12-01,0.6\n',
  });
  expect(problems).toMatchObject([{ code: 'shares-over-whole', line: 3, column: 'share' }]);
});

test('an undersown stand that says nothing else lies on its host’s ground', () => {
  const { farm } = read({
    'history.csv':
      'id,plot,what,sown_on,to,beds,undersown_in\nk,a,kale,2026-05-01,2026-10-31,1-4,\nu,a,white-mustard,2026-06-01,2026-12-01,,k\n',
  });
  expect(farm?.stands.find((stand) => stand.id === 'u')?.span).toEqual({ fromShare: 0, toShare: 0.4 });
});

test('where the last day counts, a stand to 28 February leaves its ground on the first of March', () => {
  const { farm } = read(
    { 'history.csv': 'plot,what,from,to\na,leek-mid,2023-05-20,2024-02-28\na,kale,2022-05-20,2023-02-28\n' },
    ',"conventions":{"last_day_counts":true}',
  );
  expect(farm?.stands.map((stand) => stand.to)).toEqual(['2023-03-01', '2024-02-29']);
});

test('a course stand ends in the first year that has such a day after its start, unless the row says how many years on', () => {
  const { farm } = read(
    {
      'courses.csv': 'id,name\nroots,Roots\n',
      'rotation.csv':
        'course,key,what,sow,plant,end,end_year_offset\nroots,c,carrot-maincrop,05-10,,11-20,\nroots,r,mix-rye-vetch,11-21,,04-10,\nroots,l,mix-ley-clover-grass,04-15,,03-01,2\n',
    },
    ',"rotation":{"first_year":2026}',
  );
  expect(farm?.rotation?.courses[0]?.stands.map((stand) => stand.endYearOffset)).toEqual([0, 1, 2]);
});
