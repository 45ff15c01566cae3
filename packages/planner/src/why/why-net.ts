/** Why a plot's net area is what it is: gross less strip, bank and headlands, who asks for the strip, and what would change it. */
import type { Plot } from '@leywright/book';
import { bufferDue, headlandShareOf, netAreaOf, type PlotLaw } from '../ground/net-area.ts';
import type { GroundSetting } from '../ground/stage.ts';
import type { Lever, Why, WhyInput } from '../plan/why.ts';
import { ofConvention, ofFarm, ofSums, ofTable, why, written } from './terms.ts';

export function whyNet(plot: Plot, { farm }: Pick<GroundSetting, 'farm'>): Why {
  const law: PlotLaw = {
    plot,
    field: farm.fields.find((one) => one.id === plot.field) ?? null,
    place: farm.about.place,
    conventions: farm.about.conventions,
  };
  const area = netAreaOf(law);
  const buffer = bufferDue(law);
  const headland = headlandShareOf(plot, farm.about.conventions);
  return why(area.why, 'net', {
    figures: { plot: plot.id },
    value: area.netM2,
    unit: 'm²',
    formula: 'net = (gross − hedge × strip − bank) × (1 − headland share)',
    sum: `(${written(plot.grossM2)} − ${written(plot.hedgeM)} × ${written(buffer.bufferM)} − ${written(plot.bankM2)}) × (1 − ${written(headland)}) = ${written(area.netM2)}`,
    inputs: [
      ofFarm(
        { name: 'gross', value: plot.grossM2, unit: 'm²' },
        plot.measuredBy === 'geometry' ? 'ground.geojson' : `plots.csv, ${plot.id}, gross_m2`,
      ),
      ofFarm({ name: 'hedge', value: plot.hedgeM, unit: 'm' }, `plots.csv, ${plot.id}, hedge_m`),
      stripInput(buffer),
      ofFarm({ name: 'bank', value: plot.bankM2, unit: 'm²' }, `plots.csv, ${plot.id}, bank_m2`),
      plot.headlandShare === null
        ? ofConvention({ name: 'headland share', value: headland, unit: '' }, 'headland_share')
        : ofFarm({ name: 'headland share', value: headland, unit: '' }, `plots.csv, ${plot.id}, headland_share`),
    ],
    doubt: buffer.by === 'unknown' ? ['strip-not-known'] : [],
    levers: leversOf(law, buffer),
  });
}

function stripInput(buffer: ReturnType<typeof bufferDue>): WhyInput {
  const amount = { name: 'strip', value: buffer.bufferM, unit: 'm' };
  if (buffer.by === 'law') return ofTable(amount, 'rules', { row: 'HE-02', column: 'value' });
  return buffer.by === 'own-policy' ? ofConvention(amount, 'hedge_buffer_m') : ofSums(amount);
}

function leversOf(law: PlotLaw, buffer: ReturnType<typeof bufferDue>): readonly Lever[] {
  const { plot, conventions } = law;
  const strip = buffer.bufferM > 0 ? 0 : (buffer.lawM ?? 2);
  const headland = Math.max(0, headlandShareOf(plot, conventions) - 0.02);
  const strips: readonly Lever[] =
    plot.hedgeM === 0 || buffer.by === 'law'
      ? []
      : [
          {
            change: 'strip along hedges',
            value: strip,
            unit: 'm',
            result: netAreaOf({
              ...law,
              field: null,
              place: { jurisdiction: '' },
              conventions: { ...conventions, hedgeBufferM: strip },
            }).netM2,
          },
        ];
  return [
    ...strips,
    {
      change: 'headland share',
      value: headland,
      unit: '',
      result: netAreaOf({ ...law, plot: { ...plot, headlandShare: headland } }).netM2,
    },
  ];
}
