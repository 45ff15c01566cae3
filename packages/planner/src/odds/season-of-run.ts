/** Lays a supply run out for drawing years. */
import { maturity } from '@leywright/agronomy';
import { type Day, dayNumber } from '@leywright/measures';
import type { PlannedCrop } from '../plan/inputs.ts';
import { slotTurns } from '../promise/box-weeks.ts';
import { slotAsk, unitKgOf } from '../promise/demand.ts';
import { packingKeep } from '../promise/known.ts';
import type { CropFlow } from '../supply/fill.ts';
import type { Lot } from '../supply/lot.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { nameHash } from './chance.ts';
import { usualYieldSd } from './draw-year.ts';
import { usualWarmthCd } from './ripening.ts';
import type { Season, SeasonCrop, SeasonKeeping, SeasonLot, SeasonSlot } from './season-lot.ts';

const usualBaseC = 5;

export function seasonOfRun(run: SupplyRun): Season {
  const { axis, input, promise, toWeek } = run;
  const starts = standStarts(run);
  const openWeek = Math.max(0, Math.min(toWeek, axis.weekOf(dayNumber(input.today))));
  const laying: Laying = { run, starts, meanC: weekMeans(run), openWeek };
  const promised = new Set(promise.slots.flatMap((slot) => slot.crops as readonly string[]));
  const flows = [...run.typ.flows.values()].filter((flow) => promised.has(flow.crop.id));
  const crops = flows.map((flow) => seasonCrop(laying, flow));
  return {
    weeks: toWeek,
    fromWeek: run.fromWeek,
    openWeek,
    names: Array.from({ length: toWeek }, (_, week) => axis.nameOf(week)),
    isOpen: run.typ.calendar.slice(0, toWeek).map((week) => week.closed === null),
    crops,
    slots: promise.slots.map((slot): SeasonSlot => {
      const ask = slotAsk(promise, slot);
      const due = slotTurns(promise, slot, run.typ.calendar);
      return {
        id: slot.id,
        dueWeeks: ask.units > 0 ? due.subarray(0, toWeek) : new Uint8Array(toWeek),
        boxesShare: ask.boxesShare,
        offers: slot.crops.flatMap((id) => {
          const crop = flows.findIndex((flow) => flow.crop.id === id);
          const flow = flows[crop];
          const unitKg = flow === undefined ? null : unitKgOf(flow.crop, slot.unit);
          if (flow === undefined || unitKg === null) return [];
          return [{ cropIndex: crop, drawKg: (ask.units * unitKg) / packingKeep(flow.crop) }];
        }),
      };
    }),
    meanC: laying.meanC,
    itemsPerBox: promise.itemsPerBox,
  };
}

interface Laying {
  readonly run: SupplyRun;
  readonly starts: ReadonlyMap<string, Day>;
  readonly meanC: Float64Array;
  readonly openWeek: number;
}

function seasonCrop(laying: Laying, flow: CropFlow): SeasonCrop {
  const { crop, keeping } = flow;
  return {
    id: crop.id,
    name: crop.name,
    cropSeed: nameHash(`crop/${crop.id}`),
    lots: flow.lots.map(({ lot }) => seasonLot(laying, lot)),
    keeps: keeping === null ? null : keepingForDraws(keeping),
    weighings: laying.run.typ.weighings.get(crop.id) ?? [],
  };
}

function seasonLot({ run: { axis }, starts, meanC, openWeek }: Laying, lot: Lot): SeasonLot {
  const { crop } = lot;
  const start = starts.get(lot.stand);
  const growsFromWeek = start === undefined ? lot.readyWeek : axis.weekOf(dayNumber(start));
  const baseC = maturity.maturitySum(crop.id)?.baseC ?? usualBaseC;
  const isByWarmth = crop.reference?.ttDerivedUse === 'scale';
  return {
    stand: lot.stand,
    under: lot.under,
    harvestYear: lot.harvestYear,
    toComeKg: lot.toComeKg.typ,
    readyWeek: lot.readyWeek,
    readyShare: lot.readyShare,
    standingWeeks: lot.standingWeeks,
    lastWeek: lot.lastWeek,
    recorded: lot.recorded,
    growsFromWeek,
    baseC,
    wantedCd: usualWarmthCd(meanC, { fromWeek: Math.max(growsFromWeek, openWeek), toWeek: lot.readyWeek }, baseC),
    warmthShare: (isByWarmth ? 1 : 0.5) * (lot.under === 'tunnel' ? 0.5 : 1),
    yieldSd: yieldSdOf(crop),
    standSeed: nameHash(`stand/${lot.stand}`),
  };
}

/** The table's low and high yield taken as the ends of 8 years out of 10. */
function yieldSdOf({ reference }: PlannedCrop): number {
  if (reference === null || reference.yieldLowTHa <= 0) return usualYieldSd;
  return Math.log(reference.yieldHighTHa / reference.yieldLowTHa) / (2 * 1.2816);
}

function keepingForDraws(keeping: NonNullable<CropFlow['keeping']>): SeasonKeeping {
  return {
    lossShare: keeping.lossShare('typ'),
    lossShareWorst: keeping.lossShare('low'),
    lossShareBest: keeping.lossShare('high'),
    lifeWeeks: keeping.lifeWeeks('typ'),
    lifeWeeksWorst: keeping.lifeWeeks('low'),
    lifeWeeksBest: keeping.lifeWeeks('high'),
  };
}

/** Day from which a stand grows, by stand. */
function standStarts(run: SupplyRun): ReadonlyMap<string, Day> {
  return new Map(
    run.input.ground.flatMap((plot) =>
      plot.stands.map((stand) => [stand.id, stand.plantedOn ?? stand.sownOn ?? stand.from] as const),
    ),
  );
}

function weekMeans({ axis, input: { climate }, toWeek }: SupplyRun): Float64Array {
  return Float64Array.from({ length: toWeek }, (_, week) => {
    let sum = 0;
    for (let day = 0; day < 7; day += 1) {
      const at = axis.dayOf(week) + day - climate.firstDay;
      sum += climate.meanC[at] ?? climate.meanC[at % 365] ?? 0;
    }
    return sum / 7;
  });
}
