/** Shelter and natural enemies by name. */
import { beetleBank, hedgeParasitism } from '../../habitat/natural-enemies.ts';
import { beltDensityOf, beltDensityPct, measuredBelt, windOfOpenPct } from '../../habitat/shelter.ts';
import { type CalcModel, calcModel, noAnswer } from '../calc-model.ts';
import { inputs, outputs } from '../input-list.ts';

const nebraska = 'Brandle & Finch, How windbreaks work, Univ. Nebraska EC1763';

export const shelterModels: Readonly<Record<string, CalcModel>> = {
  relative_wind: calcModel({
    title: 'Wind behind a belt',
    inputs: inputs(
      'class text:- loose, medium, dense, solid, or the closed share as "40-60 %"',
      'dist_H - heights behind the belt, negative in front of it',
    ),
    outputs: outputs('pct_of_open % of the wind in the open'),
    source: `${nebraska} (table recalled; medium half-way between loose and dense)`,
    evaluate: (v) => {
      const densityPct = beltDensityOf(v.text('class'));
      if (densityPct === null)
        return noAnswer('class', `"${v.text('class')}": loose, medium, dense, solid, or % closed`);
      return { pct_of_open: windOfOpenPct(densityPct, v.number('dist_H')) };
    },
  }),
  sanity: calcModel({
    title: 'Shelter fades beyond five heights and is gone beyond thirty',
    inputs: [],
    outputs: outputs('ok - whether it held for every density and distance'),
    source: nebraska,
    evaluate: () => ({ ok: shelterFades() }),
  }),
  dataset: calcModel({
    title: 'A measured belt of trees',
    inputs: [],
    outputs: outputs('m m behind the trees', 'mean_reduction_pct % of the wind taken away, mean of nine months'),
    source: 'Dambutta 1980/81, data set shelterbelts of the R package nsm3data; Ujah & Adeoye 1984',
    evaluate: () => ({ m: [...measuredBelt.distancesM], mean_reduction_pct: [...measuredBelt.reductionPct] }),
  }),
  hedge_effect_range: calcModel({
    title: 'How far from a hedge parasitism was higher',
    inputs: [],
    outputs: outputs('m m from the hedge, higher', 'absent_at_m m from the hedge, no longer'),
    source: 'Morandin, Long & Kremen 2014, Agriculture, Ecosystems and Environment 189:164',
    evaluate: () => ({ m: [...hedgeParasitism.higherAtM], absent_at_m: [...hedgeParasitism.notAtM] }),
  }),
  beetle_bank_distances_tested: calcModel({
    title: 'How predation falls with the distance from a beetle bank',
    inputs: inputs('m? series:m distances asked about'),
    outputs: outputs('m m distances tested', 'effect - what was found'),
    source: 'Collins et al. 2002, Agriculture, Ecosystems and Environment 93:337',
    evaluate: (v) => {
      const untested = (v.given('m') ? v.series('m') : []).filter(
        (m) => !(beetleBank.testedM as readonly number[]).includes(m),
      );
      if (untested.length > 0) return noAnswer('m', `${untested.join(', ')} m was not tested`);
      return { m: [...beetleBank.testedM], effect: beetleBank.found };
    },
  }),
};

/** Every class and the densities between, in steps of half a height. */
function shelterFades(): boolean {
  for (let densityPct = beltDensityPct.loose; densityPct <= beltDensityPct.solid; densityPct += 2.5) {
    for (let at = 5; at < 60; at += 0.5) {
      const [nearer, farther] = [windOfOpenPct(densityPct, at), windOfOpenPct(densityPct, at + 0.5)];
      if (farther < nearer || (at >= 30 && farther < 95)) return false;
    }
  }
  return true;
}
