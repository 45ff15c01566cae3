import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { readFarmFolder, readFarmZip } from '../src/index.ts';
import { known } from './known.ts';

const plots = 'id,gross_ha\na,0.5\n';
const farmJson = '{"name":"Garth","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England"}}';
const zip = (files: Record<string, string | Uint8Array>) =>
  zipSync(
    Object.fromEntries(
      Object.entries(files).map(([name, text]) => [name, typeof text === 'string' ? strToU8(text) : text]),
    ),
  );
const codes = (bytes: Uint8Array) => readFarmZip(bytes, known).problems.map((problem) => [problem.code, problem.file]);

/** Sets the same bytes in the listing at a zip's end, where a reader looks first. */
function withListing(bytes: Uint8Array, change: (view: DataView, at: number) => void): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  for (let at = 0; at + 4 < copy.length; at += 1) if (view.getUint32(at, true) === 0x02014b50) change(view, at);
  return copy;
}

test('a folder inside a zip is read as if it lay at the top, beside what systems leave there', () => {
  const { farm, problems } = readFarmZip(
    zip({
      'garth/farm.json': farmJson,
      'garth/plots.csv': plots,
      '__MACOSX/garth/._plots.csv': 'x',
      'garth/.DS_Store': 'x',
    }),
    known,
  );
  expect(problems).toEqual([]);
  expect(farm?.plots).toHaveLength(1);
});

test.each(['../plots.csv', 'garth/../../plots.csv', '/etc/plots.csv', 'C:\\farm\\plots.csv', '..\\plots.csv'])(
  'a path that climbs out of its folder (%s) is refused',
  (path) => {
    expect(codes(zip({ [path]: plots, 'farm.json': farmJson }))).toEqual([['path-outside', path]]);
    expect(
      readFarmFolder(
        new Map([
          [path, plots],
          ['farm.json', farmJson],
        ]),
        known,
      ),
    ).toMatchObject({ farm: null, problems: [{ code: 'path-outside' }, { code: 'missing-file' }] });
  },
);

test('a link in a zip is refused', () => {
  const linked = withListing(zip({ 'plots.csv': '/etc/passwd' }), (view, at) =>
    view.setUint32(at + 38, 0xa1ff0000, true),
  );
  expect(codes(linked)).toEqual([['link-in-zip', 'plots.csv']]);
});

test('a zip with a password is refused as such', () => {
  expect(codes(withListing(zip({ 'plots.csv': plots }), (view, at) => view.setUint16(at + 8, 1, true)))).toEqual([
    ['zip-locked', 'plots.csv'],
  ]);
});

test('the same file twice in a zip is refused, since one of the two would be lost', () => {
  const bytes = withListing(zip({ 'plots.csv': plots, 'plotz.csv': plots }), (view, at) =>
    view.setUint8(at + 46 + 4, 's'.charCodeAt(0)),
  );
  expect(codes(bytes)).toEqual([['file-twice', 'plots.csv']]);
});

test('a zip that says it unpacks to a thousand million bytes is refused before anything is unpacked', () => {
  const bomb = withListing(zip({ 'plots.csv': plots }), (view, at) => view.setUint32(at + 24, 1_000_000_000, true));
  expect(codes(bomb)).toEqual([['too-large', '']]);
});

test('a zip that hides how much it unpacks to never fills more than it says', () => {
  const honest = zip({ 'plots.csv': new Uint8Array(8_000_000).fill(65) });
  expect(honest.length).toBeLessThan(20_000);
  const lying = withListing(honest, (view, at) => view.setUint32(at + 24, 100, true));
  const { farm, problems } = readFarmZip(lying, known);
  expect(farm).toBeNull();
  expect(problems.length).toBeGreaterThan(0);
});

test('a zip of ten thousand files is refused', () => {
  expect(codes(zip(Object.fromEntries(Array.from({ length: 300 }, (_, at) => [`f${at}.txt`, 'x']))))).toEqual([
    ['too-many-files', ''],
  ]);
});

test('what is no zip, or half of one, is told as such', () => {
  const whole = zip({ 'plots.csv': plots });
  expect(codes(strToU8(plots))).toEqual([['not-a-zip', '']]);
  expect(codes(new Uint8Array())).toEqual([['not-a-zip', '']]);
  expect(codes(whole.slice(0, whole.length - 30))).toEqual([['not-a-zip', '']]);
  expect(codes(whole.map((byte, at) => (at > 40 && at < 60 ? 255 : byte)))).not.toEqual([]);
});

test('fifty million bytes of junk are refused by their size, at once', () => {
  const junk = new Uint8Array(50_000_000).fill(0xe7);
  const started = performance.now();
  const { problems } = readFarmFolder(
    new Map<string, string | Uint8Array>([
      ['farm.json', farmJson],
      ['plots.csv', junk],
    ]),
    known,
  );
  expect(performance.now() - started).toBeLessThan(200);
  expect(problems).toMatchObject([{ code: 'too-large', file: 'plots.csv', figures: { bytes: 50_000_000 } }]);
});

test('a file full of faults lists five hundred and counts the rest', () => {
  const rows = Array.from({ length: 2000 }, (_, at) => `p${at},much`).join('\n');
  const { problems } = readFarmFolder(
    new Map([
      ['farm.json', farmJson],
      ['plots.csv', `id,gross_ha\n${rows}\n`],
    ]),
    known,
  );
  expect(problems).toHaveLength(501);
  expect(problems.at(-1)).toMatchObject({ code: 'more-problems', gravity: 'stops', figures: { more: 1500 } });
});

test.each([
  ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13])],
  ['noughts', new Uint8Array(5000)],
  ['noise', new Uint8Array(5000).map((_, at) => (at * 7919) % 256)],
  ['text with a nought in it', 'id,gross_ha\na\0,1\n'],
])('%s in place of a table is told as no text', (_, bytes) => {
  expect(
    readFarmFolder(
      new Map<string, string | Uint8Array>([
        ['farm.json', farmJson],
        ['plots.csv', bytes],
      ]),
      known,
    ).problems,
  ).toMatchObject([{ code: 'not-text', file: 'plots.csv' }]);
});

test('an empty file, a heading alone and a hundred thousand commas do no harm', () => {
  for (const text of ['', '\n\n', 'id,gross_ha\n', ','.repeat(100_000), '"'.repeat(1001), 'id\n'.repeat(10_000)]) {
    const { farm } = readFarmFolder(
      new Map([
        ['farm.json', farmJson],
        ['plots.csv', text],
      ]),
      known,
    );
    expect(farm === null || farm.plots.length === 0).toBe(true);
  }
});

test('deeply nested JSON is refused, not followed', () => {
  const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`;
  const { farm } = readFarmFolder(
    new Map([
      ['farm.json', deep],
      ['plots.csv', plots],
      ['ground.geojson', deep],
      ['entries.jsonl', `${deep}\n`],
    ]),
    known,
  );
  expect(farm).toBeNull();
});
