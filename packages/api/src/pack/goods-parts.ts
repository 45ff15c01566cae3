/** Parts of the pack about goods: inputs and how "no animal inputs" stands, seed, lots, the store ledger, boxes. */
import { type AnimalFree, records } from '@leywright/book';
import { type Batch, proof } from '@leywright/planner';
import { kilos, notRecorded, type PackView, type PartOf } from './part.ts';

const animalFreeWords: Readonly<Record<AnimalFree, string>> = {
  stated: 'stated on paper',
  not: 'NOT animal-free',
  unknown: 'unknown',
};

const amountOf = (batch: Batch) => (batch.amount === null ? notRecorded : `${kilos(batch.amount)} ${batch.unit}`);

export const inputPart: PartOf = (view) => {
  const batches = [...view.chain.batches.values()].filter((one) => !['produce', 'seed', 'plants'].includes(one.what));
  const unknown = batches.filter((batch) => batch.animalFree === 'unknown').length;
  const bad = batches.filter((batch) => batch.animalFree === 'not').length;
  const head =
    batches.length === 0
      ? 'No input is recorded as having come on the farm. That is not the same as none: ask what was bought.'
      : `${batches.length} inputs: ${batches.length - unknown - bad} with a statement that nothing of animals is in them, ${unknown} unknown, ${bad} that are not animal-free.`;
  return {
    title: 'Inputs, with papers; no animal inputs',
    sentence: head,
    columns: [
      { head: 'Came on', widthShare: 0.09 },
      { head: 'What, from whom', widthShare: 0.22 },
      { head: 'Amount', widthShare: 0.09 },
      { head: 'Animal-free', widthShare: 0.12 },
      { head: 'Paper', widthShare: 0.1 },
      { head: 'Went to', widthShare: 0.12 },
      { head: 'Record', widthShare: 0.26 },
    ],
    rows: batches.map((batch) => [
      batch.on,
      `${batch.name} (${batch.what}), ${batch.supplier ?? notRecorded}`,
      amountOf(batch),
      animalFreeWords[batch.animalFree],
      batch.paper ?? notRecorded,
      goneTo(view, batch.batch),
      batch.entry,
    ]),
  };
};

function goneTo(view: PackView, batch: string): string {
  const uses = view.chain.uses.filter((use) => use.batch === batch);
  if (uses.length === 0) return notRecorded;
  return uses
    .map((use) => `${view.plotName(use.plot)} ${use.amount === null ? '' : kilos(use.amount)}`.trim())
    .join('; ');
}

export const seedPart: PartOf = (view) => {
  const batches = [...view.chain.batches.values()].filter((one) => one.what === 'seed' || one.what === 'plants');
  const needAsking = batches.filter((batch) => batch.status !== 'organic').length;
  const head =
    batches.length === 0
      ? 'No seed, sets or plants are recorded as having come on the farm.'
      : `${batches.length} lots; ${needAsking} are not recorded as organic and need the documented search or authorisation of this jurisdiction.`;
  return {
    title: 'Seed and plants',
    sentence: head,
    columns: [
      { head: 'Came on', widthShare: 0.1 },
      { head: 'Lot', widthShare: 0.14 },
      { head: 'What, from whom', widthShare: 0.22 },
      { head: 'Amount', widthShare: 0.09 },
      { head: 'Status', widthShare: 0.1 },
      { head: 'Paper', widthShare: 0.09 },
      { head: 'Record', widthShare: 0.26 },
    ],
    rows: batches.map((batch) => [
      batch.on,
      batch.batch,
      `${batch.name}, ${batch.supplier ?? notRecorded}`,
      amountOf(batch),
      batch.status,
      batch.paper ?? notRecorded,
      batch.entry,
    ]),
  };
};

export const lotPart: PartOf = (view) => {
  const lots = [...view.chain.lots.values()].filter((lot) => lot.on >= view.from && lot.on <= view.to);
  const liftedKg = lots.reduce((sum, lot) => sum + (lot.grossKg ?? 0), 0);
  return {
    title: 'Harvest lots',
    sentence: `${lots.length} lots in ${view.year}, ${kilos(liftedKg)} kg as lifted or delivered. Lots are numbered in the order the book received them.`,
    columns: [
      { head: 'Lot', widthShare: 0.09 },
      { head: 'Day', widthShare: 0.09 },
      { head: 'Crop', widthShare: 0.19 },
      { head: 'Plot', widthShare: 0.13 },
      { head: 'kg', widthShare: 0.08, isNumber: true },
      { head: 'Graded out', widthShare: 0.08, isNumber: true },
      { head: 'Status', widthShare: 0.08 },
      { head: 'Record', widthShare: 0.26 },
    ],
    rows: lots.map((lot) => [
      lot.label,
      lot.on,
      view.cropName(lot.crop),
      lot.kind === 'bought' ? 'bought' : view.plotName(lot.plot),
      `${kilos(lot.grossKg)}${lot.isEstimated ? ' est.' : ''}`,
      kilos(lot.gradedOutKg),
      lot.status,
      lot.entry,
    ]),
  };
};

export const ledgerPart: PartOf = (view) => {
  const rows = records.recordsInForce(view.known).flatMap(({ entry, root }) => {
    if (entry.doneOn < view.from || entry.doneOn > view.to || entry.body === null) return [];
    const line = ledgerLine(view, entry.body);
    return line === null ? [] : [[entry.doneOn, ...line, entry.by, root.id]];
  });
  return {
    title: 'Store ledger',
    sentence: `${rows.length} movements and weighings in ${view.year}. A weighing is right: what it finds missing stands in part 10 as not accounted for.`,
    columns: [
      { head: 'Day', widthShare: 0.1 },
      { head: 'What', widthShare: 0.15 },
      { head: 'Crop or bin', widthShare: 0.24 },
      { head: 'kg', widthShare: 0.1, isNumber: true },
      { head: 'By', widthShare: 0.13 },
      { head: 'Record', widthShare: 0.28 },
    ],
    rows,
  };
};

type Body = NonNullable<PackView['known'][number]['body']>;

function ledgerLine(view: PackView, body: Body): readonly [string, string, string] | null {
  switch (body.kind) {
    case 'harvest': {
      if (body.into !== 'store') return null;
      const netKg = body.grossKg === null ? null : body.grossKg * (1 - (body.gradedOutShare ?? 0));
      return ['into store', proof.poolOf(body.store ?? notRecorded, view.cropName(body.crop)), kilos(netKg)];
    }
    case 'weighing':
      return ['weighed', `${body.store ?? notRecorded}/${view.cropName(body.crop)}`, kilos(body.kg)];
    case 'bin-weighed':
      return ['weighed', body.bin, kilos(body.kg)];
    case 'binned':
      return ['into bin', body.bin, kilos(body.from.reduce((sum, one) => sum + one.kg, 0))];
    case 'let-go':
      return [body.how, body.recipient ?? body.why ?? '', kilos(body.from.reduce((sum, one) => sum + one.kg, 0))];
    default:
      return null;
  }
}

export const boxPart: PartOf = (view) => {
  const runs = [...view.chain.runs.values()].filter((run) => run.on >= view.from && run.on <= view.to);
  const boxes = runs.reduce((sum, run) => sum + run.boxes, 0);
  const head =
    runs.length === 0
      ? 'No packing run is recorded in this year: what was cut for boxes stands in part 10 as not packed.'
      : `${runs.length} packing runs, ${boxes} boxes. Drops are named; households are not part of this pack.`;
  return {
    title: 'Boxes and rounds',
    sentence: head,
    columns: [
      { head: 'Packed', widthShare: 0.1 },
      { head: 'Run', widthShare: 0.14 },
      { head: 'Boxes', widthShare: 0.08, isNumber: true },
      { head: 'kg', widthShare: 0.08, isNumber: true },
      { head: 'Handed over at (boxes)', widthShare: 0.32 },
      { head: 'Record', widthShare: 0.28 },
    ],
    rows: runs.map((run) => [
      run.on,
      run.id,
      String(run.boxes),
      kilos(run.items.reduce((sum, item) => sum + item.kg, 0)),
      view.chain.handings
        .filter((one) => one.run === run.id)
        .map((one) => `${one.drop} (${one.boxes})`)
        .join(', ') || notRecorded,
      run.entries.join(' '),
    ]),
  };
};
