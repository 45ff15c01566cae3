/** The humus balance by name. */
import * as humus from '../../carbon/humus-balance.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';

const ordinance = 'Direktzahlungen-Verpflichtungenverordnung 2004, annex 3 (VDLUFA 2004, lower values)';

export const humusModels: Readonly<Record<string, CalcModel>> = {
  official_example: calcModel({
    title: 'Humus balance of a farm',
    inputs: inputs(
      'rows rows:- rows of use, ha and kg C/ha',
      'straw_left_ha? ha straw left',
      'grain_t_ha? t/ha grain',
      'straw_ratio? - straw over grain',
      'straw_kgC_t? kg/t humus carbon of straw',
    ),
    outputs: outputs(
      'demand kg uses, humus carbon',
      'supply kg straw, humus carbon',
      'balance_total kg humus carbon',
      'per_ha kg/ha humus carbon',
    ),
    source: ordinance,
    evaluate: (v) => {
      const rows = v.rows('rows').map(([use, areaHa, kgCHa]) => ({
        areaHa: Number(areaHa),
        // A use of the table may stand without its figure.
        kgCHa: kgCHa == null ? (humus.humusUse(String(use))?.kgCHa ?? Number.NaN) : Number(kgCHa),
      }));
      if (rows.some((row) => !Number.isFinite(row.areaHa * row.kgCHa)))
        return noAnswer('rows', 'wants use, ha, kg C/ha');
      const demand = rows.reduce((sum, row) => sum + row.areaHa * row.kgCHa, 0);
      const supply = ['straw_left_ha', 'grain_t_ha', 'straw_ratio', 'straw_kgC_t'].reduce(
        (product, key) => product * (v.maybe(key) ?? 0),
        1,
      );
      const areaHa = rows.reduce((sum, row) => sum + row.areaHa, 0);
      return { demand, supply, balance_total: demand + supply, per_ha: (demand + supply) / areaHa };
    },
  }),
  supply: calcModel({
    title: 'Humus carbon of a material',
    inputs: inputs(
      'material text:- row of the supply table, with its dry matter where there are several',
      't_ha t/ha fresh',
    ),
    outputs: outputs('kgC_ha kg/ha humus carbon'),
    source: ordinance,
    evaluate: (v) => {
      const [row, another] = humus.humusMaterialsNamed(v.text('material'));
      if (row === undefined) return noAnswer('material', `"${v.text('material')}" is not in the table`);
      if (another !== undefined) return noAnswer('material', `"${v.text('material')}" is several: say its dry matter`);
      return { kgC_ha: row.carbonKgT * v.number('t_ha') };
    },
  }),
  rotation: calcModel({
    title: 'Mean humus balance of a rotation on equal plots',
    inputs: inputs(
      'equal_plots words:- a use or crop for each plot',
      'extra? rows:- rows of label and kg C/ha on one plot',
      'compost_t_ha_yr? t/ha finished compost (60 % dry) on every plot',
    ),
    outputs: outputs('per_ha_avg kg/ha humus carbon a year'),
    source: ordinance,
    evaluate: rotationAnswer,
  }),
};

function rotationAnswer(v: CalcValues) {
  const plots = v.words('equal_plots').map((word) => ({ word, use: humus.humusUse(word) }));
  const unknown = plots.filter(({ use }) => use === null).map(({ word }) => `"${word}"`);
  if (unknown.length > 0 || plots.length === 0)
    return noAnswer('equal_plots', `no use is called ${unknown.join(', ')}`);
  const extrasKgCHa = (v.given('extra') ? v.rows('extra') : []).map(([, kgC]) => Number(kgC));
  if (!extrasKgCHa.every(Number.isFinite)) return noAnswer('extra', 'wants a label and kg C/ha');
  const compostKgCT = humus.humusMaterialsNamed('finished compost 60% DM')[0]?.carbonKgT ?? 0;
  return {
    per_ha_avg: humus.rotationBalanceKgCHa({
      usesKgCHa: plots.map(({ use }) => use?.kgCHa ?? 0),
      extrasKgCHa,
      suppliedKgCHa: compostKgCT * (v.maybe('compost_t_ha_yr') ?? 0),
    }),
  };
}
