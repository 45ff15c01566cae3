/** The terms of the ground's daily account: what they are called, which columns they sum, and which model and source stand behind them. */
import type { SoilColumn } from '@leywright/agronomy';
import type { WhyInput } from '../plan/why.ts';

export interface AccountTerm {
  readonly sign: '+' | '−' | '';
  readonly name: string;
  readonly column: SoilColumn;
  readonly where: string;
  readonly source: string | null;
  readonly howKnown: WhyInput['howKnown'];
}

const nicolardot = 'Nicolardot, Recous & Mary 2001, Plant and Soil 228:83';
const brisson = 'Brisson et al. 2008, conceptual basis of the STICS crop model, eqs 8.2 and 8.5';
const fao56 = 'Allen et al. 1998, FAO Irrigation and Drainage Paper 56, chapters 7 and 8';
const burns = 'Burns 1975, Journal of Agricultural Science 85:443';

export const nitrogenTerms: readonly AccountTerm[] = [
  {
    sign: '+',
    name: 'fixed from the air by legumes',
    column: 'fixedNKgHa',
    where: 'soil/growth-day.ts, nitrogen/fixation-fall.ts',
    source: 'Anglade, Billen & Garnier 2015, Ecosphere 6(3):37; covers.csv for the share from the air',
    howKnown: 'verified',
  },
  {
    sign: '+',
    name: 'from rain and air',
    column: 'depositedNKgHa',
    where: 'soil-run/plot-parts.ts',
    source: null,
    howKnown: 'common practice',
  },
  {
    sign: '+',
    name: 'brought with seed and what was carried on',
    column: 'broughtNKgHa',
    where: 'soil-run/stand-of-ground.ts',
    source: 'crops.csv, n_low_kg_t to n_high_kg_t',
    howKnown: 'common practice',
  },
  {
    sign: '−',
    name: 'sold',
    column: 'soldNKgHa',
    where: 'soil/stand-changes.ts',
    source: 'crops.csv, n_product_typ_kg_ha',
    howKnown: 'common practice',
  },
  {
    sign: '−',
    name: 'carried to other ground',
    column: 'movedNKgHa',
    where: 'soil/stand-changes.ts',
    source: null,
    howKnown: 'common practice',
  },
  {
    sign: '−',
    name: 'washed out at the base of the profile',
    column: 'leachedNKgHa',
    where: 'nitrogen/leaching.ts',
    source: burns,
    howKnown: 'verified',
  },
  {
    sign: '−',
    name: 'gone as gas from wet ground',
    column: 'denitrifiedNKgHa',
    where: 'nitrogen/denitrification.ts',
    source: 'Hénault & Germon 2000, European Journal of Soil Science 51:281',
    howKnown: 'verified',
  },
  {
    sign: '−',
    name: 'gone as ammonia from mulch',
    column: 'ammoniaNKgHa',
    where: 'nitrogen/mulch-ammonia.ts',
    source:
      'Larsson et al. 1998, Nutrient Cycling in Agroecosystems 51:41; Weber et al. 2018, Journal of Soil and Plant Biology',
    howKnown: 'verified',
  },
];

/** Told beside the balance: what moved inside the ground. */
export const insideTerms: readonly AccountTerm[] = [
  {
    sign: '',
    name: 'freed by humus',
    column: 'humusReleaseNKgHa',
    where: 'nitrogen/release-factors.ts',
    source: brisson,
    howKnown: 'verified',
  },
  {
    sign: '',
    name: 'freed by residues, less what they locked up',
    column: 'residueReleaseNKgHa',
    where: 'nitrogen/residue-release.ts',
    source: nicolardot,
    howKnown: 'verified',
  },
  {
    sign: '',
    name: 'taken up from the ground',
    column: 'uptakeNKgHa',
    where: 'nitrogen/critical-nitrogen.ts',
    source: 'Greenwood et al. 1990 and the curves named there',
    howKnown: 'memory',
  },
  {
    sign: '',
    name: 'of that from below 60 cm',
    column: 'deepUptakeNKgHa',
    where: 'soil/growth-day.ts',
    source: null,
    howKnown: 'common practice',
  },
  {
    sign: '',
    name: 'washed below the roots of the day, not yet lost',
    column: 'belowRootsNKgHa',
    where: 'nitrogen/leaching.ts',
    source: burns,
    howKnown: 'verified',
  },
  {
    sign: '',
    name: 'mineral nitrogen in the ground at the end of the year',
    column: 'mineralNKgHa',
    where: 'soil/run-soil.ts',
    source: null,
    howKnown: null,
  },
];

export const waterTerms: readonly AccountTerm[] = [
  {
    sign: '+',
    name: 'rain',
    column: 'rainMm',
    where: 'weather.csv, else the climate',
    source: null,
    howKnown: null,
  },
  {
    sign: '+',
    name: 'irrigation',
    column: 'irrigationMm',
    where: 'soil/water-day.ts',
    source: null,
    howKnown: null,
  },
  {
    sign: '−',
    name: 'evaporated from open ground',
    column: 'evaporationMm',
    where: 'water/surface-evaporation.ts',
    source: fao56,
    howKnown: 'verified',
  },
  {
    sign: '−',
    name: 'drunk by what grows',
    column: 'transpirationMm',
    where: 'soil/water-day.ts',
    source: fao56,
    howKnown: 'verified',
  },
  { sign: '−', name: 'run off', column: 'runoffMm', where: 'water/runoff.ts', source: null, howKnown: 'memory' },
  {
    sign: '−',
    name: 'drained at the base of the profile',
    column: 'drainedMm',
    where: 'nitrogen/leaching.ts',
    source: burns,
    howKnown: 'verified',
  },
];
