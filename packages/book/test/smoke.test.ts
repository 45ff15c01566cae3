import { asDay, asId } from '@leywright/measures';
import { expect, test } from 'vitest';
import {
  emptyFarm,
  entriesOf,
  newEntryId,
  readFarmFolder,
  readFarmZip,
  replay,
  writeFarmFolder,
  zipFolder,
} from '../src/index.ts';

const known = {
  crops: new Map([
    ['carrot-maincrop', 'Carrot, maincrop'],
    ['potato-maincrop', 'Potato'],
  ]),
  covers: new Map([['mix-rye-vetch', 'Rye & vetch']]),
  organisms: new Map([['clubroot', 'x']]),
  families: ['Apiaceae'],
  storeKinds: ['cold'],
};
test('smoke', () => {
  const files = new Map<string, string>([
    [
      'farm.json',
      JSON.stringify({
        name: 'Alderbrook',
        place: { lat_deg: 52, lon_deg: -1, jurisdiction: 'England' },
        conventions: { last_day_counts: true },
        rotation: { first_year: 2026 },
        promise: { pack_weekday: 4 },
      }),
    ],
    ['plots.csv', 'id,name,gross_ha,bed_count,course_at_start\na,Top field,0.5,10,roots\nb,Top field,"0,4",,\n'],
    ['courses.csv', 'id\nroots\n'],
    [
      'rotation.csv',
      'course,key,what,sow,end\nroots,carrots,carrot-maincrop,05-10,11-20\nroots,rye,mix-rye-vetch,11-21,04-01\n',
    ],
    ['history.csv', 'plot,what,sown_on,to,beds\na,Carrot maincrop,2025-05-10,2025-11-20,3-5\n'],
    ['sizes.csv', 'id,households\nsmall,70\nbig,50\n'],
    ['promise.csv', 'crop,from,to,portion_small,portion_big\ncarrot-maincrop,10-01,03-01,1,1.5\n'],
    ['aliases.csv', 'name,crop\nMöhre,carrot-maincrop\n'],
  ]);
  const reading = readFarmFolder(files, known);
  console.log(JSON.stringify(reading.problems, null, 1));
  expect(reading.farm).not.toBeNull();
  const farm = reading.farm!;
  const again = readFarmFolder(writeFarmFolder(farm, []), known);
  console.log([...writeFarmFolder(farm, [])].map(([n, t]) => `${n}\n${t}`).join('\n'), again.problems);
  expect(again.farm).toEqual(farm);
  expect(readFarmZip(zipFolder(writeFarmFolder(farm, [])), known).farm).toEqual(farm);
  const entries = entriesOf(farm, {
    farm: farm.about.id,
    by: asId('p'),
    device: asId('d'),
    deviceSeqFrom: 1,
    doneOn: asDay('2026-01-01'),
    enteredAt: '2026-01-01T10:00:00Z',
    newId: (n) => newEntryId(new Uint8Array(10).fill(n), 1),
  });
  expect(replay(emptyFarm(farm.about), entries)).toEqual({ farm, findings: [] });
});
