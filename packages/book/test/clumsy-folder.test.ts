import { expect, test } from 'vitest';
import { type FolderReading, type Problem, readFarmFolder } from '../src/index.ts';
import { known } from './known.ts';

const farmJson = '{"name":"Garth","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England"}}';
const plots = 'id,name,gross_ha\na,Top field,0.5\nb,Top field,0.4\n';

function read(files: Record<string, string | Uint8Array>, json = farmJson): FolderReading {
  return readFarmFolder(
    new Map<string, string | Uint8Array>([['farm.json', json], ['plots.csv', plots], ...Object.entries(files)]),
    known,
  );
}

/** What matters of a problem, short. */
const short = (problems: readonly Problem[]) =>
  problems.map(({ code, file, line, column, found, nearest }) => [code, file, line, column, found, nearest[0] ?? null]);
const problemsOf = (files: Record<string, string | Uint8Array>, json?: string) => short(read(files, json).problems);

const bytes = (text: string) => new TextEncoder().encode(text);
const utf16 = (text: string, mark: boolean) =>
  new Uint8Array([
    ...(mark ? [0xff, 0xfe] : []),
    ...[...text].flatMap((letter) => [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8]),
  ]);

test.each([
  ['plain', bytes('id,name,gross_ha\na,Öster,0.5\n')],
  ['with a mark at its start', bytes('\uFEFFid,name,gross_ha\na,Öster,0.5\n')],
  ['UTF-16 with a mark', utf16('id,name,gross_ha\na,Öster,0.5\n', true)],
  ['UTF-16 without a mark', utf16('id,name,gross_ha\na,Öster,0.5\n', false)],
  ['semicolons and decimal commas', 'id;name;gross_ha\na;Öster;0,5\n'],
  ['semicolons said by the spreadsheet', 'sep=;\nid;name;gross_ha\na;Öster;0,5\n'],
  ['tabs and old line ends', 'id\tname\tgross_ha\ra\tÖster\t0.5\r'],
  ['blank rows, spaces and capitals', '\n\n ID , Name ,Gross ha\r\n\r\n a , Öster , 0.5 \r\n,,\r\n'],
  ['decomposed letters', 'id,name,gross_ha\na,O\u0308ster,0.5\n'],
  ['another unit', 'id,name,gross_m2\na,Öster,"5,000.00"\n'],
  ['thousands parted by spaces', 'id,name,gross_m2\na,Öster,5 000\n'],
  [
    'the letters of older spreadsheets',
    new Uint8Array([...bytes('id,name,gross_ha\na,'), 0xd6, ...bytes('ster,0.5\n')]),
  ],
])('a plots file with %s is read', (_, file) => {
  const { farm, problems } = read({ 'plots.csv': file });
  expect(problems.filter((problem) => problem.gravity === 'stops')).toEqual([]);
  expect(farm?.plots).toMatchObject([{ id: 'a', name: 'Öster', grossM2: 5000 }]);
});

test('acres and square rods are read exactly: 1 acre = 160 square rods = 4046.8564224 m²', () => {
  expect(read({ 'plots.csv': 'id,gross_acres\na,1\n' }).farm?.plots[0]?.grossM2).toBe(4046.8564224);
  expect(read({ 'plots.csv': 'id,gross_rods\na,160\n' }).farm?.plots[0]?.grossM2).toBeCloseTo(4046.8564224, 9);
});

test('twelve mistakes in one folder are told at once, each in its place, and nothing is taken in', () => {
  const reading = read({
    'plots.csv':
      'id,name,gross_ha,hedge_m,headlnd_share\na,Top field,-0.5,0,\na,Low field,0.4,,\n,No id,1,,\nc,Far,0.4,twelve,\n',
    'history.csv':
      'plot,what,sown_on,to\na,carot maincrop,2026-05-01,2026-10-31\nz,kale,2026-02-31,2026-10-31\na,kale,3/4/2027,2027-10-31\na,kale,2027-05-01,2027-04-01\n',
    'promise.csv': 'crops,from,to\nkale,2026-w53,2026-w40\nkale,2027-w53,2028-w02\n',
    'people.csv': 'id,role\nann,growr\n',
  });
  expect(reading.farm).toBeNull();
  expect(reading.entries).toEqual([]);
  expect(short(reading.problems)).toEqual([
    ['unknown-heading', 'plots.csv', 1, 'headlnd_share', 'headlnd_share', 'headland_share'],
    ['out-of-range', 'plots.csv', 2, 'gross_ha', '-0.5', '0.5'],
    ['missing-value', 'plots.csv', 4, 'id', null, null],
    ['not-a-number', 'plots.csv', 5, 'hedge_m', 'twelve', null],
    ['unknown-name', 'history.csv', 2, 'what', 'carot maincrop', 'carrot-maincrop'],
    ['unknown-name', 'history.csv', 3, 'plot', 'z', 'a'],
    ['not-in-calendar', 'history.csv', 3, 'sown_on', '2026-02-31', '2026-02-28'],
    ['ambiguous-day', 'history.csv', 4, 'sown_on', '3/4/2027', '2027-04-03'],
    ['ends-before-start', 'history.csv', 5, 'to', '2027-04-01', null],
    ['ends-before-start', 'promise.csv', 2, 'to', '2026-w40', null],
    ['no-such-week', 'promise.csv', 3, 'from', '2027-w53', '2027-w52'],
    ['not-in-list', 'people.csv', 2, 'role', 'growr', 'grower'],
  ]);
});

test('a row keeps its line of the spreadsheet below cells with line breaks and blank rows', () => {
  const file = 'id,name,gross_ha\na,"Top\nfield\nby the lane",0.5\n\nb,Low,much\n';
  const [problem] = read({ 'plots.csv': file }).problems;
  expect(problem).toMatchObject({
    code: 'not-a-number',
    line: 4,
    column: 'gross_ha',
    found: 'much',
    figures: { textLine: 6 },
  });
});

test('a quote that is never closed is told at the row where it opens', () => {
  expect(problemsOf({ 'plots.csv': 'id,name,gross_ha\na,Top,0.5\nb,"Low,0.4\nc,Far,0.3\n' })).toEqual([
    ['quotes-broken', 'plots.csv', 3, null, null, null],
  ]);
});

test('two plots may share a name, but a row that names it must say which', () => {
  expect(read({}).farm?.plots.map((plot) => plot.name)).toEqual(['Top field', 'Top field']);
  expect(
    short(read({ 'history.csv': 'plot,what,sown_on,to\nTop field,kale,2026-05-01,2026-10-31\n' }).problems),
  ).toEqual([['ambiguous-name', 'history.csv', 2, 'plot', 'Top field', 'a']]);
});

test('an id that stands twice is told with the line where it stood first', () => {
  expect(read({ 'plots.csv': 'id,gross_ha\na,1\nb,1\na,2\n' }).problems).toMatchObject([
    { code: 'id-twice', line: 4, column: 'id', found: 'a', figures: { firstLine: 2 } },
  ]);
});

test('a crop may be named by id, by name, in any case, and by an alias in another language', () => {
  const stands = read({
    'aliases.csv': 'alias,crop\nMöhre,carrot-maincrop\ncarotte,Carrot maincrop\n',
    'history.csv':
      'plot,what,sown_on,to\na,carrot-maincrop,2021-05-01,2021-10-31\na,CARROT MAINCROP,2022-05-01,2022-10-31\na,möhre,2023-05-01,2023-10-31\na,Mohre,2024-05-01,2024-10-31\na,Carotte,2025-05-01,2025-10-31\n',
  }).farm?.stands;
  expect(stands?.map((stand) => stand.what)).toEqual(Array(5).fill('carrot-maincrop'));
});

test('what kind of stand it is follows from the table it stands in, unless the row says so', () => {
  const stands = read({
    'history.csv':
      'plot,what,kind,sown_on,to\na,kale,,2021-05-01,2021-10-31\na,white-mustard,,2022-05-01,2022-10-31\na,mix-ley-clover-grass,ley,2023-05-01,2025-10-31\n',
  }).farm?.stands;
  expect(stands?.map((stand) => stand.kind)).toEqual(['crop', 'cover', 'ley']);
});

test('a number that could be two is refused with both readings', () => {
  expect(read({ 'plots.csv': 'id,gross_m2\na,"1,234"\n' }).problems).toMatchObject([
    { code: 'ambiguous-number', found: '1,234', nearest: ['1.234', '1234'] },
  ]);
});

test('one unmistakable number settles the sign of its file', () => {
  expect(read({ 'plots.csv': 'id;gross_m2;hedge_m\na;1.234;1,5\n' }).farm?.plots[0]).toMatchObject({
    grossM2: 1234,
    hedgeM: 1.5,
  });
  expect(read({ 'plots.csv': 'id,gross_m2,hedge_m\na,"1,234",1.5\n' }).farm?.plots[0]).toMatchObject({
    grossM2: 1234,
    hedgeM: 1.5,
  });
  expect(read({ 'plots.csv': 'id;gross_m2\na;1.234\n' }).problems).toMatchObject([{ code: 'ambiguous-number' }]);
});

test('farm.json may say how days and numbers are written', () => {
  const json =
    '{"name":"Garth","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England"},"day_order":"day-first","decimals":"comma"}';
  const { farm } = read(
    { 'plots.csv': 'id;gross_m2\na;1.234\n', 'history.csv': 'plot;what;sown_on;to\na;kale;3/4/2027;4/5/2027\n' },
    json,
  );
  expect(farm?.plots[0]?.grossM2).toBe(1234);
  expect(farm?.stands[0]).toMatchObject({ from: '2027-04-03', to: '2027-05-04' });
});

test.each([
  ['3/4/27', 'two-digit-year'],
  ['soon', 'not-a-day'],
  ['31/2/2027', 'not-in-calendar'],
  ['2270-05-01', 'out-of-range'],
  ['9999-12-31', 'out-of-range'],
  ['0001-01-01', 'out-of-range'],
])('the day %s is told as %s', (found, code) => {
  expect(
    read({ 'history.csv': `plot,what,from,to\na,kale,2020-01-01,${found}\n` }).problems.map((problem) => problem.code),
  ).toEqual([code]);
});

test('week 53 is a week in 2026, which has one, and none in 2027', () => {
  expect(read({ 'closed.csv': 'week\n2026-w53\n', 'promise.csv': 'crops\nkale\n' }).farm?.promise?.closedWeeks).toEqual(
    ['2026-w53'],
  );
  expect(problemsOf({ 'closed.csv': 'week\n2027-w53\n' })).toEqual([
    ['no-such-week', 'closed.csv', 2, 'week', '2027-w53', '2027-w52'],
  ]);
});

test('a heading near one of ours stops; a column of somebody’s own is only told', () => {
  expect(read({ 'plots.csv': 'id,gross_ha,Uncle’s opinion\na,1,stony\n' })).toMatchObject({
    farm: { plots: [{ id: 'a' }] },
    problems: [{ code: 'unknown-heading', gravity: 'look', column: 'Uncle’s opinion' }],
  });
  expect(read({ 'plots.csv': 'id,gross_ha,bed_cout\na,1,4\n' })).toMatchObject({
    farm: null,
    problems: [{ code: 'unknown-heading', gravity: 'stops', nearest: ['bed_count'] }],
  });
});

test('a file near one of ours stops; papers beside the files are let be', () => {
  expect(problemsOf({ 'histroy.csv': 'x', 'README.md': 'x', '.DS_Store': 'x', 'map.pdf': 'x' })).toEqual([
    ['unknown-file', 'histroy.csv', null, null, 'histroy.csv', 'history.csv'],
    ['unknown-file', 'map.pdf', null, null, 'map.pdf', null],
  ]);
});

test('one figure under two units is told, and so is a heading that stands twice', () => {
  expect(problemsOf({ 'plots.csv': 'id,gross_ha,gross_m2\na,1,10000\n' })).toEqual([
    ['two-units', 'plots.csv', 1, 'gross_ha', 'gross_m2, gross_ha', null],
  ]);
  expect(problemsOf({ 'plots.csv': 'id,gross_ha,id\na,1,a\n' })).toEqual([
    ['heading-twice', 'plots.csv', 1, 'id', 'id', null],
  ]);
});

test('a comma inside an unquoted text is told, because the cells after it have slipped', () => {
  expect(read({ 'plots.csv': 'id,gross_ha,soil\na,1,clay, heavy\n' }).problems).toMatchObject([
    { code: 'cells-without-heading', line: 2, found: 'heavy' },
  ]);
});

test('a missing plots file, a missing heading and a missing area are told', () => {
  expect(short(readFarmFolder(new Map([['farm.json', farmJson]]), known).problems)).toEqual([
    ['missing-file', 'plots.csv', null, null, null, null],
  ]);
  expect(problemsOf({ 'plots.csv': 'name,gross_ha\nTop,1\n' })).toEqual([
    ['missing-heading', 'plots.csv', 1, 'id', null, 'id'],
  ]);
  expect(problemsOf({ 'plots.csv': 'id\na\n' })).toEqual([
    ['missing-value', 'plots.csv', 2, 'gross_m2', null, 'gross_m2'],
  ]);
});

test('what farm.json leaves out and a plan needs is assumed, and said', () => {
  const { farm, problems } = readFarmFolder(new Map([['plots.csv', plots]]), known);
  expect(farm?.about.place).toMatchObject({ latDeg: 52, lonDeg: -1, jurisdiction: 'general' });
  expect(short(problems)).toEqual([
    ['assumed', 'farm.json', null, 'name', null, 'Our farm'],
    ['assumed', 'farm.json', null, 'place', null, '52, -1'],
    ['assumed', 'farm.json', null, 'place.jurisdiction', null, 'general'],
  ]);
});

test('every fault of farm.json is told at its path', () => {
  const json =
    '{"name":"","place":{"lat_deg":152,"lon_deg":"west"},"convntions":{},"shows":{"area":"morgen"},"conventions":{"headland_share":2,"rest_season_from":"13-01","bare_wekes":3},"favourite":"kale"}';
  expect(read({}, json).problems.map(({ code, column, nearest }) => [code, column, nearest[0] ?? null])).toEqual(
    expect.arrayContaining([
      ['unknown-key', 'convntions', 'conventions'],
      ['unknown-key', 'favourite', null],
      ['unknown-key', 'conventions.bare_wekes', 'bare_weeks'],
      ['out-of-range', 'name', null],
      ['out-of-range', 'place.lat_deg', null],
      ['wrong-shape', 'place.lon_deg', null],
      ['not-in-list', 'shows.area', 'ha'],
      ['out-of-range', 'conventions.headland_share', null],
      ['not-a-month-day', 'conventions.rest_season_from', null],
    ]),
  );
  expect(read({}, '{\n"name": "x"\n"place": 1}').problems[0]).toMatchObject({
    code: 'not-json',
    file: 'farm.json',
    line: 3,
  });
});

test('a percentage in a share column is read; a bare 85 is refused with 0.85', () => {
  expect(read({ 'plots.csv': 'id,gross_ha,headland_share\na,1,12 %\n' }).farm?.plots[0]?.headlandShare).toBe(0.12);
  expect(read({ 'plots.csv': 'id,gross_ha,headland_pct\na,1,12\n' }).farm?.plots[0]?.headlandShare).toBeCloseTo(
    0.12,
    12,
  );
  expect(read({ 'plots.csv': 'id,gross_ha,headland_share\na,1,12\n' }).problems).toMatchObject([
    { code: 'out-of-range', nearest: ['0.12'] },
  ]);
});

test('a time zone that no system knows is told', () => {
  const json =
    '{"name":"Garth","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England","time_zone":"Europe/Lundon"}}';
  expect(problemsOf({}, json)).toEqual([
    ['not-in-list', 'farm.json', null, 'place.time_zone', '"Europe/Lundon"', null],
  ]);
});
