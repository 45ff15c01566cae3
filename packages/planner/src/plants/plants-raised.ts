/**
 * Plants raised for the year: trays, cells, mix, bench week by week, seedbed, and how long they may wait.
 *
 * Source  cells and volumes of trays of 60 x 40 cm from reference/crops.csv; the bench a twentieth lost to gaps, the mix a tenth spilt, and how long plants
 *         hold by the size of their cell: common practice.
 * Checks  test/plants/plants-raised.test.ts (trays, mix and bench counted by hand)
 * Holds   trays hold at least the cells, cells at least the plants; the bench of a week holds every tray that stands in it.
 * Leaves out  larger cells after potting on, heat, and what the mix is made of: its maker's statement that no animal products are in it is to be kept with the batch.
 */
import { trays } from '@leywright/agronomy';
import type { Farm } from '@leywright/book';
import { addDays, type Day, dayAt, dayNumber, type IsoWeek, mondayOf, weekOf, yearOf } from '@leywright/measures';
import { cropBookOf } from '../crops/crop-book.ts';
import type { PlacedStand } from '../plan/ground.ts';
import type { PlannedCrop } from '../plan/inputs.ts';
import type { Plan } from '../plan/plan.ts';
import { plantsFor } from '../promise/plants.ts';
import { raisedFromDay, seedbedPlantsPerM } from '../work/jobs/raise-jobs.ts';

export interface Raised {
  readonly stand: string;
  readonly crop: string;
  readonly name: string;
  readonly variety: string | null;
  readonly plot: string;
  readonly sownOn: Day;
  readonly plantOn: Day;
  /** Last day before they spoil in their cells. */
  readonly holdsTo: Day;
  /** Plants that are to stand, at their stations. */
  readonly plants: number;
  /** Null for plants raised in a seedbed. */
  readonly cells: number | null;
  readonly cellsPerTray: number | null;
  readonly trays: number | null;
  /** Cells filled beyond those needed. */
  readonly spareCells: number | null;
  readonly mixL: number | null;
  /** Row of seedbed, for plants raised in the ground. */
  readonly seedbedM: number | null;
}

export interface BenchWeek {
  readonly week: IsoWeek;
  readonly trays: number;
  readonly benchM2: number;
}

export interface PlantsRaised {
  readonly year: number;
  readonly lines: readonly Raised[];
  readonly bench: readonly BenchWeek[];
  readonly trays: number;
  readonly mixL: number;
  readonly seedbedM: number;
  readonly fullest: BenchWeek | null;
}

const trayM2 = 0.24;
const benchGapShare = 0.05;
const mixSpiltShare = 0.1;
const seedbedHoldsDays = 21;

/** Plants in cells so small that so many fill a tray hold so many days (common practice). */
const holdsDays = [
  { cellsFrom: 250, days: 10 },
  { cellsFrom: 100, days: 14 },
  { cellsFrom: 0, days: 21 },
] as const;

/** What is raised for planting, sown in the year in focus. */
export function plantsRaised(farm: Farm, plan: Plan): PlantsRaised {
  const crops = cropBookOf(farm);
  const lines = plan.ground
    .flatMap((plot) => plot.stands)
    .flatMap((stand) => {
      const crop = stand.kind === 'crop' && stand.endedBy !== 'lost' ? crops.cropOf(stand.what) : null;
      const sownDay = crop === null ? null : raisedFrom(stand, crop);
      if (crop === null || sownDay === null || yearOf(dayAt(sownDay)) !== plan.year) return [];
      return [raised(stand, crop, dayAt(sownDay))];
    })
    .toSorted((a, b) => (a.sownOn < b.sownOn ? -1 : a.sownOn > b.sownOn ? 1 : 0));
  const bench = benchOf(lines);
  const sum = (of: (line: Raised) => number | null) => lines.reduce((total, line) => total + (of(line) ?? 0), 0);
  return {
    year: plan.year,
    lines,
    bench,
    trays: sum((line) => line.trays),
    mixL: sum((line) => line.mixL),
    seedbedM: sum((line) => line.seedbedM),
    fullest: bench.reduce<BenchWeek | null>(
      (most, one) => (most === null || one.trays > most.trays ? one : most),
      null,
    ),
  };
}

function raisedFrom(stand: PlacedStand, crop: PlannedCrop): number | null {
  return raisedFromDay({ stand, crop: crop.reference });
}

/** What is sown in trays or the seedbed on a day. */
export function sownOnDay(plants: PlantsRaised, day: Day): readonly Raised[] {
  return plants.lines.filter((line) => line.sownOn === day);
}

function raised(stand: PlacedStand, crop: PlannedCrop, sownOn: Day): Raised {
  const needed = plantsFor(crop, stand.areaM2);
  const table = crop.reference;
  const plantOn = stand.plantedOn ?? stand.from;
  const plants = Math.ceil((needed.stations ?? 0) - 1e-9);
  const common = {
    stand: stand.id,
    crop: crop.id,
    name: stand.name,
    variety: stand.variety,
    plot: stand.plot,
    sownOn,
    plantOn,
    plants,
  };
  const cellsPerTray = table?.moduleCells ?? null;
  if (table === null || cellsPerTray === null || needed.trays === null || table.establishment !== 'module') {
    const seedbedM = plants / seedbedPlantsPerM;
    return { ...common, ...noTrays, seedbedM, holdsTo: addDays(plantOn, seedbedHoldsDays) };
  }
  const cells = Math.ceil((needed.seeds ?? 0) / table.seedsPerCell - 1e-9);
  const filled = needed.trays * cellsPerTray;
  const holds = holdsDays.find((one) => cellsPerTray >= one.cellsFrom)?.days ?? 14;
  return {
    ...common,
    cells,
    cellsPerTray,
    trays: needed.trays,
    spareCells: filled - cells,
    mixL: table.moduleMl === null ? null : trays.mixL(filled, table.moduleMl, mixSpiltShare),
    seedbedM: null,
    holdsTo: addDays(plantOn, holds),
  };
}

const noTrays = { cells: null, cellsPerTray: null, trays: null, spareCells: null, mixL: null } as const;

/** Trays that stand on any day of a week, from sowing to planting. */
function benchOf(lines: readonly Raised[]): readonly BenchWeek[] {
  const onBench = new Map<IsoWeek, number>();
  for (const line of lines) {
    if (line.trays === null) continue;
    const last = dayNumber(line.plantOn);
    for (let day = dayNumber(mondayOf(weekOf(line.sownOn))); day <= last; day += 7) {
      const week = weekOf(dayAt(day));
      onBench.set(week, (onBench.get(week) ?? 0) + line.trays);
    }
  }
  return [...onBench]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([week, count]) => ({ week, trays: count, benchM2: trays.benchM2(count, trayM2, benchGapShare) }));
}
