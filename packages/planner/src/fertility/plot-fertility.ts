/** The slow side of a plot's fertility: phosphate, potash, lime, small nutrients, humus and carbon. */
import type { Plot } from '@leywright/book';
import type { GroundSetting } from '../ground/stage.ts';
import type { PlotFertility } from '../plan/fertility.ts';
import type { NitrogenInput } from '../soil/nitrogen-terms.ts';
import { type AcidInput, classOf, limeAccount, magnesiumOf, shortageCautions } from './acidity.ts';
import { type CarbonStockInput, carbonAccount } from './carbon-stock.ts';
import { harvestsOf } from './harvests.ts';
import { type HumusInput, humusAccount } from './humus.ts';
import { meanMonths } from './mean-months.ts';
import { nutrientAccount, type PlotRecord } from './nutrients.ts';

/** What each account of a plot is reckoned from. */
export interface FertilityInputs {
  readonly record: PlotRecord;
  readonly acid: AcidInput;
  readonly humus: HumusInput;
  /** Null where the soil's class or its organic matter is not known, and on peat. */
  readonly carbon: CarbonStockInput | null;
}

export function plotFertility(plot: Plot, input: NitrogenInput, setting: GroundSetting): PlotFertility {
  const of = fertilityInputs(plot, input, setting);
  return {
    plot: plot.id,
    phosphorus: nutrientAccount('phosphorus', of.record),
    potassium: nutrientAccount('potassium', of.record),
    lime: limeAccount(of.acid),
    magnesium: magnesiumOf(of.acid.samples),
    cautions: shortageCautions(of.acid),
    humus: humusAccount(of.humus),
    carbon: of.carbon === null ? null : carbonAccount(of.carbon),
  };
}

export function fertilityInputs(plot: Plot, input: NitrogenInput, setting: GroundSetting): FertilityInputs {
  const { farm, horizon, todayDay } = setting;
  const years = { fromYear: horizon.fromYear, toYear: horizon.toYear };
  const harvests = harvestsOf(input, years);
  const samples = farm.soilSamples.filter((sample) => sample.plot === plot.id);
  const stands = setting.standsOf(plot.id);
  const clubrootRecorded = farm.marks.some((mark) => mark.plot === plot.id && /clubroot/.test(mark.organism));
  const acid = { plot, stands, samples, todayDay, clubrootRecorded };
  const ground = classOf(acid);
  const sampled = ground !== null && !ground.isPeaty && samples.some((sample) => sample.organicMatterPct !== null);
  return {
    record: { plot: plot.id, harvests, samples, years: years.toYear - years.fromYear + 1 },
    acid,
    humus: { plot: plot.id, harvests, stands, years },
    carbon: sampled
      ? { plot: plot.id, stands, samples, clayPct: ground.clayPct, months: meanMonths(farm.about.place), years }
      : null,
  };
}
