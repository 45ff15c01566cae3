/** Acidity of a plot, the limestone it needs, and small nutrients that may run short under what is to grow. */
import { minerals } from '@leywright/agronomy';
import type { Plot, SoilSample } from '@leywright/book';
import { dayNumber } from '@leywright/measures';
import type { GroundStand } from '../ground/ground-stand.ts';
import type { LimeAccount, SampledFigure, ShortageCaution } from '../plan/fertility.ts';
import { type GroundClass, groundClass } from './ground-of.ts';
import { range, sampledLine } from './nutrients.ts';

export interface AcidInput {
  readonly plot: Plot;
  readonly stands: readonly GroundStand[];
  readonly samples: readonly SoilSample[];
  readonly todayDay: number;
  readonly clubrootRecorded: boolean;
}

export const limeDoubts = ['ph-uneven-in-field', 'soil-not-known', 'lime-since-sample-not-known'] as const;

/** The last sample with a pH; null when there is none. */
export function lastPh(samples: readonly SoilSample[]): (SoilSample & { readonly ph: number }) | null {
  const known = samples.flatMap((sample) => (sample.ph === null ? [] : [{ ...sample, ph: sample.ph }]));
  return known.sort((a, b) => dayNumber(a.takenOn) - dayNumber(b.takenOn)).at(-1) ?? null;
}

export function classOf({ plot, samples }: Pick<AcidInput, 'plot' | 'samples'>): GroundClass | null {
  const organic = samples.map((sample) => sample.organicMatterPct).filter((pct) => pct !== null);
  return groundClass(plot, organic.at(-1) ?? null);
}

export function targetPhOf(ground: GroundClass | null): number {
  const { arable } = minerals.lime.limeTargetPh;
  return ground?.lime === 'peat' ? arable.peat : ground?.lime === 'organic' ? arable.organic : arable.mineral;
}

export function limeAccount(input: AcidInput): LimeAccount | null {
  const sample = lastPh(input.samples);
  if (sample === null) return null;
  const ground = classOf(input);
  const targetPh = targetPhOf(ground);
  const ageYears = Math.max(0, (input.todayDay - dayNumber(sample.takenOn)) / 365.25);
  const need =
    ground === null
      ? null
      : minerals.lime.limeNeedWithDoubtTHa({
          ph: sample.ph,
          targetPh,
          factorTPh: minerals.lime.limeFactorTPh[ground.lime].arable,
        });
  return {
    takenOn: sample.takenOn,
    ph: sample.ph,
    targetPh,
    phNow: range(minerals.lime.phAfterYears(sample.ph, ageYears)),
    needTHa: need,
    cautions: cautionsOf(input, need?.typ ?? 0, { targetPh, ageYears }),
    doubt: ['ph-uneven-in-field', ...(ground === null ? ['soil-not-known'] : []), 'lime-since-sample-not-known'],
    why: `lime/${input.plot.id}`,
  };
}

function cautionsOf(
  { stands, todayDay, clubrootRecorded }: AcidInput,
  amountTHa: number,
  { targetPh, ageYears }: { readonly targetPh: number; readonly ageYears: number },
): readonly string[] {
  const coming = stands.filter((one) => one.fromDay >= todayDay && one.stand.kind === 'crop');
  return minerals.lime.limeCautionsOf({
    amountTHa,
    targetPh,
    onStandingGrass: stands.some((one) => one.stand.kind === 'ley' && one.fromDay <= todayDay && one.toDay > todayDay),
    nextGroups: coming.map((one) => one.plant.crop?.rotationGroup ?? 'other'),
    clubrootRecorded,
    sampleAgeYears: ageYears,
  });
}

/** Magnesium by its last sample. */
export function magnesiumOf(samples: readonly SoilSample[]): SampledFigure | null {
  return sampledLine('magnesium', samples).figures.at(-1) ?? null;
}

/** What to look out for under each crop still to come. */
export function shortageCautions(input: AcidInput): readonly ShortageCaution[] {
  const ph = lastPh(input.samples)?.ph ?? null;
  const ground = classOf(input);
  return input.stands.flatMap((one) => {
    const { crop, name } = one.plant;
    if (crop === null || one.stand.kind !== 'crop' || one.toDay <= input.todayDay) return [];
    const risks = minerals.smallNutrients.smallNutrientRisksOf({
      cropId: crop.id,
      ph,
      lightOrShallow: ground?.isLight ?? false,
      peaty: ground?.isPeaty ?? false,
      boronMgL: null,
      magnesiumIndex: magnesiumOf(input.samples)?.index ?? null,
    });
    return risks.map((risk) => ({ risk, stand: one.stand.id, name, year: Number(one.stand.from.slice(0, 4)) }));
  });
}
