/** Why a crop needs the ground it needs: what the boxes ask for, divided by what each step keeps and by the yield. */

import type { PlannedCrop } from '../plan/inputs.ts';
import type { CropNeed, Keep } from '../plan/supply.ts';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import { householdsOf } from '../promise/demand.ts';
import { yieldSaid } from '../promise/known.ts';
import { yieldSpread } from '../supply/expected.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { ofFarm, ofKnown, ofSums, why, written } from '../why/terms.ts';
import { again, householdsTimes, withOwn } from './supply-again.ts';

export function whyArea(cropId: string, run: SupplyRun): Why | null {
  const need = needOf(run, cropId);
  const crop = run.input.crops.cropOf(cropId);
  if (need === null || crop === null || need.needM2 === null || need.yieldKgM2 === null) return null;
  const said = yieldSaid(crop);
  const counted = need.keeps.filter((keep) => said?.measure === 'gross' || keep.step !== 'grading');
  const { lowShare, highShare } = yieldSpread(crop);
  const kept = counted.length === 0 ? '' : ` / (${counted.map((keep) => written(keep.keepShare)).join(' × ')})`;
  const steps = counted.length === 0 ? '' : ` / (${counted.map((keep) => `kept in ${keep.step}`).join(' × ')})`;
  return why(need.why.area, 'area', {
    figures: { crop: cropId, year: run.input.year, plannedM2: need.plannedM2 },
    value: need.needM2,
    low: need.needM2 / highShare,
    high: need.needM2 / lowShare,
    unit: 'm²',
    formula: `ground = kilos in boxes${steps} / yield`,
    sum: `${written(need.demandKg ?? 0)}${kept} / ${written(need.yieldKgM2)} = ${written(need.needM2)}`,
    inputs: [
      demandInput(need),
      householdsInput(run),
      ...counted.map((keep) => keepInput(crop, keep)),
      yieldInput(crop, need),
    ],
    doubt: doubtOf(need),
    levers: leversOf(run, crop, need),
  });
}

export function needOf(run: SupplyRun, crop: string): CropNeed | null {
  return run.needs.find((one) => one.crop === crop) ?? null;
}

export function demandInput(need: CropNeed): WhyInput {
  return ofSums({ name: 'kilos in boxes', value: need.demandKg, unit: 'kg' });
}

export function householdsInput(run: SupplyRun): WhyInput {
  return ofFarm({ name: 'households', value: householdsOf(run.promise), unit: '' }, 'sizes.csv, households');
}

function keepInput(crop: PlannedCrop, keep: Keep): WhyInput {
  const loss = { packing: crop.packingLossShare, store: crop.storeLossTotalShare, grading: crop.gradingLossShare }[
    keep.step
  ];
  const name = `kept in ${keep.step}`;
  if (loss !== null) return { ...ofKnown(name, loss, ''), value: keep.keepShare };
  return { ...ofSums({ name, value: keep.keepShare, unit: '' }), where: keep.source };
}

function yieldInput(crop: PlannedCrop, need: CropNeed): WhyInput {
  return { ...ofKnown('yield', yieldSaid(crop)?.known ?? null, 'kg/m²'), value: need.yieldKgM2 };
}

function doubtOf(need: CropNeed): readonly string[] {
  return [
    ...(need.yieldBasis === 'reference' ? ['yield-of-the-table'] : ['yield-is-an-average']),
    ...(need.keeps.some((keep) => keep.step === 'store' && keep.source.startsWith('storage'))
      ? ['store-loss-recalled']
      : []),
    ...(need.keeps.some((keep) => keep.step === 'grading') ? [] : ['grading-inside-yield']),
  ];
}

function leversOf(run: SupplyRun, crop: PlannedCrop, need: CropNeed): readonly Lever[] {
  const tenthLess = again(run, householdsTimes(0.9));
  const households: Lever = {
    change: 'households',
    value: householdsOf(tenthLess.promise),
    unit: '',
    result: needOf(tenthLess, crop.id)?.needM2 ?? 0,
  };
  const moreTHa = (yieldSaid(crop)?.known.value ?? 0) * 1.1;
  const measure = yieldSaid(crop)?.measure ?? 'marketable';
  const figure = {
    gross: { yieldGrossTHa: moreTHa },
    marketable: { yieldMarketableTHa: moreTHa },
    packed: { yieldPackedTHa: moreTHa },
  }[measure];
  const better = needOf(again(run, withOwn(crop.id, figure)), crop.id)?.needM2 ?? 0;
  const packing = crop.packingLossShare?.value ?? 0;
  const tidier: readonly Lever[] =
    packing === 0 || measure === 'packed'
      ? []
      : [
          {
            change: 'lost in packing',
            value: packing / 2,
            unit: '',
            result:
              needOf(again(run, withOwn(crop.id, { packingLossShare: packing / 2 })), crop.id)?.needM2 ??
              need.needM2 ??
              0,
          },
        ];
  return [households, { change: 'yield', value: moreTHa, unit: 't/ha', result: better }, ...tidier];
}
