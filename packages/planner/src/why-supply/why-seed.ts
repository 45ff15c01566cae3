/** Why so much seed, or so many sets or tubers: plants wanted, over the share that comes up, times their mass. */

import type { PlannedCrop } from '../plan/inputs.ts';
import type { CropNeed } from '../plan/supply.ts';
import type { Lever, Why } from '../plan/why.ts';
import { plantsPerRowM } from '../promise/plants.ts';
import type { SupplyRun } from '../supply/supply-run.ts';
import { ofKnown, ofSums, ofTable, why, written } from '../why/terms.ts';
import { again, withOwn } from './supply-again.ts';
import { needOf } from './why-area.ts';

export function whySeed(cropId: string, run: SupplyRun): Why | null {
  const need = needOf(run, cropId);
  const crop = run.input.crops.cropOf(cropId);
  if (need === null || crop === null || need.needM2 === null) return null;
  if (need.seeds === null) return need.setKg === null ? null : whySets(run, crop, need);
  return need.seedsPerM === null ? whyRaised(run, crop, need) : whyDrilled(run, crop, need);
}

function whyDrilled(run: SupplyRun, crop: PlannedCrop, need: CropNeed): Why {
  const plants = plantsPerRowM(crop) ?? 0;
  const share = (crop.germinationShare?.value ?? 1) * (crop.fieldFactorShare?.value ?? 1);
  return why(need.why.seed, 'seed', {
    figures: { crop: crop.id, year: run.input.year, packs: need.packs, seedKg: need.seedKg },
    value: need.seeds,
    unit: 'seeds',
    formula: 'seeds = metres of row × plants a metre / (germination × field factor)',
    sum: `${written(need.rowM ?? 0)} × ${written(plants)} / ${written(share)} = ${written(need.seeds ?? 0)}`,
    inputs: [
      ofSums({ name: 'metres of row', value: need.rowM, unit: 'm' }, need.why.area),
      crop.plantsPerRowM === null
        ? ofSums({ name: 'plants a metre', value: plants, unit: '' })
        : ofKnown('plants a metre', crop.plantsPerRowM, ''),
      ofKnown('germination', crop.germinationShare, ''),
      ...(crop.fieldFactorShare === null ? [] : [ofKnown('field factor', crop.fieldFactorShare, '')]),
      ofKnown('mass of a thousand', crop.thousandSeedG, 'g'),
      ofKnown('margin', crop.seedMarginShare, ''),
    ],
    doubt: doubtOf(crop),
    levers: leversOf(run, crop, (again) => again.seeds),
  });
}

function whyRaised(run: SupplyRun, crop: PlannedCrop, need: CropNeed): Why {
  const table = crop.reference;
  const perCell = table?.seedsPerCell ?? 1;
  return why(need.why.seed, 'seed', {
    figures: { crop: crop.id, year: run.input.year, trays: need.trays, packs: need.packs, seedKg: need.seedKg },
    value: need.seeds,
    unit: 'seeds',
    formula: 'seeds = plants wanted / plants out of each seed, in whole cells × seeds a cell',
    sum: `${written(need.stations ?? 0)} / ${written(crop.germinationShare?.value ?? 1)} → ${written((need.seeds ?? 0) / perCell)} × ${written(perCell)} = ${written(need.seeds ?? 0)}`,
    inputs: [
      ofSums({ name: 'plants wanted', value: need.stations, unit: '' }, need.why.area),
      ofKnown('plants out of each seed', crop.germinationShare, ''),
      ...(table === null
        ? []
        : [
            ofTable({ name: 'seeds a cell', value: perCell, unit: '' }, 'crops', {
              row: table.id,
              column: 'seeds_per_cell',
            }),
          ]),
      ofKnown('margin', crop.seedMarginShare, ''),
    ],
    doubt: doubtOf(crop),
    levers: leversOf(run, crop, (again) => again.seeds),
  });
}

function whySets(run: SupplyRun, crop: PlannedCrop, need: CropNeed): Why {
  const table = crop.reference;
  const up = crop.germinationShare?.value ?? 1;
  const margin = crop.seedMarginShare?.value ?? 0;
  return why(need.why.seed, 'seed', {
    figures: { crop: crop.id, year: run.input.year, setKg: need.setKg },
    value: need.setKg,
    unit: 'kg',
    formula: 'kilos = plants wanted / share that comes up × (1 + margin) × mass of one',
    sum: `${written(need.stations ?? 0)} / ${written(up)} × ${written(1 + margin)} × ${written((table?.plantingUnitG ?? 0) / 1000)} = ${written(need.setKg ?? 0)}`,
    inputs: [
      ofSums({ name: 'plants wanted', value: need.stations, unit: '' }, need.why.area),
      ofKnown('share that comes up', crop.germinationShare, ''),
      ofKnown('margin', crop.seedMarginShare, ''),
      ...(table === null
        ? []
        : [
            ofTable({ name: 'mass of one', value: table.plantingUnitG, unit: 'g' }, 'crops', {
              row: table.id,
              column: 'planting_unit_g',
            }),
          ]),
    ],
    doubt: doubtOf(crop),
    levers: leversOf(run, crop, (again) => again.setKg),
  });
}

function doubtOf(crop: PlannedCrop): readonly string[] {
  return crop.germinationShare?.origin === 'own'
    ? ['seedbed-of-the-year']
    : ['emergence-of-the-table', 'seedbed-of-the-year'];
}

function leversOf(run: SupplyRun, crop: PlannedCrop, result: (need: CropNeed) => number | null): readonly Lever[] {
  const share = crop.germinationShare?.value ?? 1;
  const worse = share * 0.9;
  const margin = (crop.seedMarginShare?.value ?? 0) / 2;
  const at = (figures: Parameters<typeof withOwn>[1]) => {
    const need = needOf(again(run, withOwn(crop.id, figures)), crop.id);
    return need === null ? 0 : (result(need) ?? 0);
  };
  return [
    { change: 'share that comes up', value: worse, unit: '', result: at({ germinationShare: worse }) },
    ...(crop.rowsPerBed === null
      ? []
      : [
          {
            change: 'rows on a bed',
            value: crop.rowsPerBed.value + 1,
            unit: '',
            result: at({ rowsPerBed: crop.rowsPerBed.value + 1 }),
          },
        ]),
    { change: 'margin', value: margin, unit: '', result: at({ seedMarginShare: margin }) },
  ];
}
