import { describe, expect, test } from 'vitest';
import { filesInZip, mend, readFarmFolder, zipFolder } from '../src/index.ts';
import { known } from './known.ts';

const { writeAt, writtenAt } = mend;

const plots = 'id;letter;gross_ha;note\na;A;1,5;"wet; heavy"\n\nb;B;two;\n';

describe('a cell is mended in its place', () => {
  test('what stands there is shown as it was written', () => {
    expect(writtenAt(plots, { file: 'plots.csv', line: 4, column: 'gross_ha' })).toBe('two');
    expect(writtenAt(plots, { file: 'plots.csv', line: 2, column: 'note' })).toBe('wet; heavy');
  });

  test('the other cells, the blank row and the semicolons stay', () => {
    const mended = writeAt(plots, { file: 'plots.csv', line: 4, column: 'gross_ha' }, '2');
    expect(mended).toBe('id;letter;gross_ha;note\na;A;1,5;"wet; heavy"\n\nb;B;2;\n');
  });

  test('a heading is a cell too', () => {
    const mended = writeAt('ids,letter\na,A\n', { file: 'plots.csv', line: 1, column: 'ids' }, 'id');
    expect(mended).toBe('id,letter\na,A\n');
  });

  test('a short row grows to the cell', () => {
    expect(writeAt('id,letter,name\na\n', { file: 'plots.csv', line: 2, column: 'name' }, 'Ash')).toBe(
      'id,letter,name\na,,Ash\n',
    );
  });

  test('a column that is not there has no cell to mend', () => {
    expect(writtenAt(plots, { file: 'plots.csv', line: 2, column: 'gross_m2' })).toBeNull();
    expect(writeAt(plots, { file: 'plots.csv', line: 9, column: 'note' }, 'x')).toBeNull();
  });

  test('after mending every problem of a table the folder reads', () => {
    const file = 'plots.csv';
    const faulty = 'id,letter,gross_ha\na,A,1.5\nb,B,two\nc,C,-1\n';
    const first = readFarmFolder(new Map([[file, faulty]]), known);
    const stops = first.problems.filter((problem) => problem.gravity === 'stops');
    expect(stops.map(({ line, column }) => [line, column])).toEqual([
      [3, 'gross_ha'],
      [4, 'gross_ha'],
    ]);
    const mended = stops.reduce((text, problem) => writeAt(text, problem, '1') ?? text, faulty);
    expect(readFarmFolder(new Map([[file, mended]]), known).farm).not.toBeNull();
  });
});

describe('a value of farm.json is mended in its place', () => {
  const farm = '{ "name": "Ash", "rotation": { "first_year": "soon" }, "promise": { "closed_every_year": [1, 99] } }';
  test('numbers stay numbers and words stay words', () => {
    const mended = writeAt(farm, { file: 'farm.json', line: null, column: 'rotation.first_year' }, '2026') ?? '';
    expect(JSON.parse(mended)).toMatchObject({ name: 'Ash', rotation: { first_year: 2026 } });
    const named = writeAt(farm, { file: 'farm.json', line: null, column: 'name' }, 'Long Ash') ?? '';
    expect(JSON.parse(named)).toMatchObject({ name: 'Long Ash' });
  });

  test('one member of a list, and a value that was missing', () => {
    const place = { file: 'farm.json', line: null, column: 'promise.closed_every_year.1' };
    expect(writtenAt(farm, place)).toBe('99');
    expect(JSON.parse(writeAt(farm, place, '52') ?? '')).toMatchObject({ promise: { closed_every_year: [1, 52] } });
    expect(JSON.parse(writeAt('{}', { ...place, column: 'place.lat_deg' }, '52.3') ?? '')).toEqual({
      place: { lat_deg: 52.3 },
    });
  });

  test('text that is no JSON has no value to mend', () => {
    expect(writtenAt('{ "name": ', { file: 'farm.json', line: null, column: 'name' })).toBeNull();
  });
});

test('a line of the book is mended as a line', () => {
  const place = { file: 'entries.jsonl', line: 2, column: 'v' };
  expect(writtenAt('{"a":1}\n{"b"\n', place)).toBe('{"b"');
  expect(writeAt('{"a":1}\n{"b"\n', place, '{"b":2}')).toBe('{"a":1}\n{"b":2}\n');
});

test('the files of a zip come out as they went in, and no files out of what is no zip', () => {
  const latin = new Uint8Array([0x69, 0x64, 0x0a, 0xe9]);
  const files = filesInZip(
    zipFolder(
      new Map<string, string | Uint8Array>([
        ['plots.csv', 'id\n'],
        ['crops.csv', latin],
      ]),
    ),
  );
  expect(new TextDecoder().decode(files?.get('plots.csv') as Uint8Array)).toBe('id\n');
  expect(files?.get('crops.csv')).toEqual(latin);
  expect(filesInZip(new Uint8Array([1, 2, 3]))).toBeNull();
});
