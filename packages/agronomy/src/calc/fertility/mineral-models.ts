/** Phosphate, potash, magnesium and lime by name. */
import { limeNeedTHa, wholeTonnes } from '../../minerals/lime.ts';
import { offtakeKgHa, offtakeRate } from '../../minerals/offtake.ts';
import { addOxides, elementShare } from '../../minerals/oxides.ts';
import { buildUpKgHa, soilIndex } from '../../minerals/soil-index.ts';
import { type CalcModel, type CalcValues, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';

export const mineralModels: Readonly<Record<string, CalcModel>> = {
  offtake: calcModel({
    title: 'Phosphate and potash removed with produce',
    inputs: inputs(
      'crop? text:- row of the off-take table',
      't_ha? t/ha fresh produce',
      'rotation? rows:- rows of crop and t/ha, summed',
    ),
    outputs: outputs('P2O5 kg/ha phosphate', 'K2O kg/ha potash'),
    source: 'Potash Development Association 2020; AHDB RB209',
    evaluate: offtakeAnswer,
  }),
  P_to_oxide: calcModel({
    title: 'Phosphate and potash from phosphorus and potassium',
    inputs: inputs('P kg phosphorus', 'K kg potassium'),
    outputs: outputs('P2O5 kg phosphate', 'K2O kg potash'),
    source: 'molar masses',
    evaluate: (v) => ({ P2O5: v.number('P') / elementShare.p, K2O: v.number('K') / elementShare.k }),
  }),
  P_index: calcModel({
    title: 'Phosphorus index',
    inputs: inputs('olsen_mg_l mg/l phosphorus by Olsen’s method'),
    outputs: outputs('index - UK index'),
    source: 'Nutrient Action Programme Regulations (NI) 2019/81 schedule 5; AHDB RB209',
    evaluate: (v) => ({ index: indexText('phosphorus', 'olsen', v.number('olsen_mg_l')) }),
  }),
  K_index: calcModel({
    title: 'Potassium index',
    inputs: inputs('mg_l mg/l potassium by ammonium nitrate'),
    outputs: outputs('index - UK index'),
    source: 'AHDB RB209 (recalled)',
    evaluate: (v) => ({ index: indexText('potassium', 'ammonium-nitrate', v.number('mg_l')) }),
  }),
  Mg_index: calcModel({
    title: 'Magnesium index',
    inputs: inputs('mg_l mg/l magnesium by ammonium nitrate'),
    outputs: outputs('index - UK index'),
    source: 'AHDB RB209 (recalled)',
    evaluate: (v) => ({ index: indexText('magnesium', 'ammonium-nitrate', v.number('mg_l')) }),
  }),
  buildup: calcModel({
    title: 'Yearly addition over off-take at a low index',
    inputs: inputs('index number-or-text:- index: 0, 1, 2-, 2+, 3 …'),
    outputs: outputs('extra_kg_ha_P2O5_or_K2O kg/ha phosphate or potash'),
    source: 'AHDB RB209 as quoted by Tried & Tested',
    evaluate: (v) => {
      const index = Number(/^\s*(\d+(?:\.\d+)?)\s*[-+]?\s*$/.exec(v.text('index').toString())?.[1]);
      if (Number.isNaN(index)) return noAnswer('index', `"${v.text('index')}" is no index`);
      return { extra_kg_ha_P2O5_or_K2O: buildUpKgHa(index) };
    },
  }),
  lime_need: calcModel({
    title: 'Ground limestone needed',
    inputs: inputs(
      'pH - measured',
      'target - wanted',
      'factor t/ha for each unit of pH',
      'NV? % neutralising value, 54 when not given',
      'round? text:- whole tonnes, half up',
    ),
    outputs: outputs('t_ha t/ha of the material'),
    source: 'AHDB RB209 section 1; Defra liming factors',
    evaluate: (v) => {
      const needTHa = limeNeedTHa({
        ph: v.number('pH'),
        targetPh: v.number('target'),
        factorTPh: v.number('factor'),
        neutralisingValuePct: v.maybe('NV') ?? 54,
      });
      const round = v.given('round') ? v.text('round').toLowerCase() : 'none';
      if (/whole|half up|tonnes/.test(round)) return { t_ha: wholeTonnes(needTHa) };
      return /^(none|no|)$/.test(round) ? { t_ha: needTHa } : noAnswer('round', 'whole tonnes, half up; or none');
    },
  }),
};

function indexText(...of: Parameters<typeof soilIndex>): string | null {
  const found = soilIndex(...of);
  return found.kind === 'index' ? found.index : null;
}

function offtakeAnswer(v: CalcValues) {
  const rows = v.given('rotation') ? v.rows('rotation') : [[v.given('crop') ? v.text('crop') : '', v.maybe('t_ha')]];
  const found = rows.map(([crop, massTHa]) => ({ crop, massTHa, rate: offtakeRate(String(crop)) }));
  const bad = found.find(({ rate, massTHa }) => rate === null || typeof massTHa !== 'number');
  if (bad !== undefined)
    return noAnswer(v.given('rotation') ? 'rotation' : 'crop', `"${String(bad.crop)}", ${String(bad.massTHa)} t/ha`);
  const sum = addOxides(
    found.map(({ rate, massTHa }) => offtakeKgHa(rate ?? { p2o5KgT: 0, k2oKgT: 0 }, massTHa as number)),
  );
  return { P2O5: sum.p2o5KgHa, K2O: sum.k2oKgHa };
}
