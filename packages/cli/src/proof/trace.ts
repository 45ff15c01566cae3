/** From a run or a drop back to seed and ground; from a lot, seed, batch, bin or plot forward to every drop. */
import { roundForJson, type ToldTrace, told } from '@leywright/api';
import { proof } from '@leywright/planner';
import { openFarm } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable, wrapped } from '../tables/text-table.ts';
import { said } from '../words.ts';
import { entriesKnown, parseProofWish } from './proof-wish.ts';

export async function traceCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseProofWish(args, 2, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const [name, what] = wish.words;
  const opened = await openFarm({ ...wish, name }, io);
  if (typeof opened === 'number') return opened;
  if (what === undefined || told.readTraceStart(what) === null) return refuse(io, [said.noTrace]);
  const chain = proof.followFarm(opened.farm, entriesKnown(opened, wish.knownOn));
  const given = { farm: opened.farm, cropName: proof.cropNameOf(opened.farm), knownOn: wish.knownOn };
  const trace = told.tellTrace(chain, what, given);
  if (trace === null) return refuse(io, [said.noSuchTrace(what)]);
  if (wish.json) printJson(io, roundForJson(trace));
  else io.out(traceText(trace));
  return 0;
}

const kilos = (kg: number | null) => (kg === null ? 'not weighed' : kg.toFixed(1));

function traceText(trace: ToldTrace): string {
  const known = trace.knownOn === null ? '' : `, as known on ${trace.knownOn}`;
  const parts = [
    `${trace.what}, ${trace.direction === 'back' ? 'back to seed and ground' : 'forward to the doors'}${known}: ${kilos(trace.kg)} kg`,
    lotsTable(trace),
    groundTable(trace),
    runsTable(trace),
    trace.others.length === 0
      ? null
      : textTable(
          [
            { head: 'Other ways out' },
            { head: 'Day' },
            { head: 'kg', align: 'right' },
            { head: 'To' },
            { head: 'Record' },
          ],
          trace.others.map((one) => [one.how, one.on, kilos(one.kg), one.recipient ?? '', one.entry]),
        ),
    trace.direction === 'back' ? null : hereText(trace),
    trace.missing.length === 0
      ? null
      : ['What is missing', ...trace.missing.map((one) => wrapped(one.sentence, '  '))].join('\n'),
    trace.notKnownKg > 0 ? `${kilos(trace.notKnownKg)} kg have no known source.` : null,
  ];
  return parts.filter((part) => part !== null).join('\n\n');
}

function lotsTable({ lots }: ToldTrace): string {
  return textTable(
    [
      { head: 'Lot' },
      { head: 'Lifted' },
      { head: 'Plot' },
      { head: 'kg', align: 'right' },
      { head: 'Share', align: 'right' },
      { head: 'Seed' },
      { head: 'Record' },
    ],
    lots.map(({ lot, kg, share, sowings }) => [
      `${lot.label} ${lot.cropName}`,
      lot.on,
      lot.plotName ?? (lot.kind === 'bought' ? 'bought' : 'not recorded'),
      kilos(kg),
      `${(share * 100).toFixed(1)} %`,
      sowings.map((sowing) => sowing.seedLot ?? 'not recorded').join(', '),
      lot.entry,
    ]),
  );
}

function groundTable({ lots }: ToldTrace): string | null {
  const rows = lots.flatMap(({ lot, ground, inputs }) => [
    ...ground.map((one) => [lot.label, one.on, one.kind, one.what, one.entry]),
    ...inputs.map((one) => [
      lot.label,
      one.on,
      'input',
      `${one.name ?? one.batch}; animal-free: ${one.animalFree}`,
      one.entry,
    ]),
  ]);
  if (rows.length === 0) return null;
  return textTable(
    [{ head: 'Ground of' }, { head: 'Day' }, { head: 'What' }, { head: 'Of' }, { head: 'Record' }],
    rows,
  );
}

function runsTable({ runs, handings }: ToldTrace): string | null {
  if (runs.length === 0) return null;
  const dropsOf = (run: string) => handings.filter((one) => one.run === run).map((one) => `${one.drop} (${one.boxes})`);
  return textTable(
    [
      { head: 'Run' },
      { head: 'Packed' },
      { head: 'Boxes', align: 'right' },
      { head: 'kg', align: 'right' },
      { head: 'Drops (boxes)' },
    ],
    runs.map((run) => [run.id, run.on, String(run.boxes), kilos(run.kg), dropsOf(run.id).join(', ') || 'not recorded']),
  );
}

function hereText({ leftKg, bins }: ToldTrace): string {
  const inBins = bins.map(({ bin, kg }) => `${kilos(kg)} kg in ${bin}`);
  return `Still here: ${[`${kilos(leftKg)} kg not put anywhere`, ...inBins].join('; ')}.`;
}
