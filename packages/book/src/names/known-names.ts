/** Names known before any row is read: of the reference tables, and of the folder's own ids and names. */
import { plainHeading, type Sheet } from '../folder/csv.ts';
import { type Names, nameList } from './names.ts';

/** What the reference tables know, handed in because the book knows no agronomy. */
export interface KnownNames {
  /** Id → name. */
  readonly crops: ReadonlyMap<string, string>;
  /** Covers and mixes. */
  readonly covers: ReadonlyMap<string, string>;
  readonly organisms: ReadonlyMap<string, string>;
  readonly families: readonly string[];
  readonly storeKinds: readonly string[];
}

type Pair = readonly [id: string, name: string];

/** All lists of names of a folder. */
export function namesOf(sheets: ReadonlyMap<string, Sheet>, known: KnownNames): Names {
  const own = (file: string, idHeadings: readonly string[], nameHeadings: readonly string[] = ['name']) =>
    pairsOf(sheets.get(file), idHeadings, nameHeadings);
  const ownCrops = own('crops.csv', ['id', 'crop']);
  const crops: readonly Pair[] = [...known.crops, ...ownCrops];
  const direct = nameList(crops);
  // An alias may itself name a crop by any of its names.
  const aliases = own('aliases.csv', ['crop'], ['alias', 'name']).flatMap(([crop, alias]): Pair[] => {
    const named = direct.find(crop);
    return named.kind === 'one' ? [[named.id, alias]] : [];
  });
  const cropPairs = [...crops, ...aliases];
  return {
    crop: nameList(cropPairs),
    plant: nameList([...cropPairs, ...known.covers]),
    plot: nameList([...own('plots.csv', ['id', 'plot']), ...own('plots.csv', ['id', 'plot'], ['letter'])]),
    field: nameList(own('fields.csv', ['id', 'field'])),
    organism: nameList(known.organisms),
    family: nameList(known.families.map((one) => [one, one] as const)),
    course: nameList(own('courses.csv', ['id', 'course'])),
    store: nameList(own('stores.csv', ['id', 'store'])),
    'store kind': nameList(known.storeKinds.map((one) => [one, one] as const)),
    size: nameList(own('sizes.csv', ['id', 'size'])),
    person: nameList(own('people.csv', ['id', 'person'])),
  };
}

function pairsOf(sheet: Sheet | undefined, idHeadings: readonly string[], nameHeadings: readonly string[]): Pair[] {
  if (sheet === undefined) return [];
  const headings = sheet.headings.map(plainHeading);
  const idAt = headings.findIndex((heading) => idHeadings.includes(heading));
  const nameAt = headings.findIndex((heading) => nameHeadings.includes(heading));
  return sheet.rows.flatMap(({ cells }): Pair[] => {
    const id = (cells[idAt] ?? '').normalize('NFC');
    return id === '' ? [] : [[id, (cells[nameAt] ?? '').normalize('NFC') || id]];
  });
}
