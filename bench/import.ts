/** A large farm folder read and written: forty years of history, thirty of weather, and the same with a mistake in every row. Prints one JSON object. */
import { type KnownNames, readFarmFolder, readFarmZip, writeFarmFolder, zipFolder } from '@leywright/book';
import { addDays, asDay } from '@leywright/measures';
import { middleMs, seeded } from './seeded.ts';

const random = seeded(20270101);
const crops = ['kale', 'carrot-maincrop', 'leek-mid', 'potato-maincrop', 'onion-set'];
const known: KnownNames = {
  crops: new Map(crops.map((crop) => [crop, crop])),
  covers: new Map([['mix-rye-vetch', 'Rye and vetch']]),
  organisms: new Map(),
  families: [],
  storeKinds: [],
};
const plots = Array.from({ length: 20 }, (_, at) => `p${at}`);
const start = asDay('1990-01-01');

function history(rows: number, spoil: (crop: string) => string): string {
  const lines = Array.from({ length: rows }, (_, at) => {
    const from = addDays(start, at * 7);
    const crop = crops[Math.floor(random() * crops.length)] ?? 'kale';
    return `${plots[at % plots.length]},${spoil(crop)},${from},${addDays(from, 120)},"sown wet, ""again"""`;
  });
  return `plot,what,sown_on,to,reason\n${lines.join('\n')}\n`;
}

function weather(days: number): string {
  const lines = Array.from(
    { length: days },
    (_, at) =>
      `${addDays(start, at)},${(random() * 25).toFixed(1)},${(random() * 10).toFixed(1)},${(random() * 9).toFixed(1)}`,
  );
  return `day,t_max_c,t_min_c,rain_mm\n${lines.join('\n')}\n`;
}

const folder = (spoil: (crop: string) => string) =>
  new Map([
    ['farm.json', '{"name":"Bench","place":{"lat_deg":52,"lon_deg":-1,"jurisdiction":"England"}}'],
    ['plots.csv', `id,gross_ha\n${plots.map((plot) => `${plot},0.5`).join('\n')}\n`],
    ['history.csv', history(2000, spoil)],
    ['weather.csv', weather(30 * 365)],
  ]);

const sound = folder((crop) => crop);
const spoilt = folder((crop) => `${crop.slice(0, 2)}x${crop.slice(2)}`);
const read = middleMs(5, () => readFarmFolder(sound, known));
const { farm } = read.result;
if (farm === null || farm.stands.length !== 2000) throw new Error('The bench could not read its own folder.');
const written = middleMs(5, () => writeFarmFolder(farm, []));
const zip = zipFolder(written.result);
const readZip = middleMs(3, () => readFarmZip(zip, known));
const readSpoilt = middleMs(3, () => readFarmFolder(spoilt, known));
const junk = new Uint8Array(50_000_000).fill(65);
const refused = middleMs(3, () => readFarmFolder(new Map<string, string | Uint8Array>([['plots.csv', junk]]), known));
console.log(
  JSON.stringify({
    historyRows: 2000,
    weatherRows: 30 * 365,
    readMs: read.ms,
    writeMs: written.ms,
    readZipMs: readZip.ms,
    zipBytes: zip.length,
    readSpoiltMs: readSpoilt.ms,
    problems: readSpoilt.result.problems.length,
    refuse50MbMs: refused.ms,
    readable: readZip.result.farm !== null,
  }),
);
