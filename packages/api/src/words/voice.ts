/** Who speaks to whom: the language, the farm's own measures, the year in view, and the names behind the ids. */
import type { Farm, Shows } from '@leywright/book';
import { knownNames, type Plan } from '@leywright/planner';
import type { Language } from './languages.ts';

export interface Names {
  readonly plots: ReadonlyMap<string, string>;
  /** Crops and covers, own ones over the reference's. */
  readonly plants: ReadonlyMap<string, string>;
  readonly stands: ReadonlyMap<string, string>;
  readonly stores: ReadonlyMap<string, string>;
  readonly people: ReadonlyMap<string, string>;
  readonly organisms: ReadonlyMap<string, string>;
  readonly courses: ReadonlyMap<string, string>;
  /** Ids by the names of the reference tables, which a sentence says its own way. A farm's own names stay as they are. */
  readonly common: ReadonlyMap<string, string>;
}

export interface Voice {
  readonly language: Language;
  readonly shows: Pick<Shows, 'area' | 'mass'>;
  /** Days of this year are written without it; null = every day with its year. */
  readonly year: number | null;
  readonly names: Names;
}

/** What of a farm is needed to speak of it. */
export type Spoken = Pick<Farm, 'about' | 'plots' | 'stores' | 'crops' | 'people' | 'rotation' | 'stands'>;

const metric: Voice['shows'] = { area: 'ha', mass: 'kg' };

/** The voice for a plan. Without the farm, its own units and the names of stores and people are not known. */
export function voiceOf(plan: Plan, farm: Spoken | null = null, language: Language = 'en-GB'): Voice {
  return { language, shows: farm?.about.shows ?? metric, year: plan.year, names: namesOf(plan, farm) };
}

/** The voice for words that stand outside any farm, such as problems of a folder. */
export function plainVoice(language: Language = 'en-GB'): Voice {
  return { language, shows: metric, year: null, names: noNames };
}

const none: ReadonlyMap<string, string> = new Map();
const noNames: Names = {
  plots: none,
  plants: none,
  stands: none,
  stores: none,
  people: none,
  organisms: none,
  courses: none,
  common: none,
};

function namesOf(plan: Plan, farm: Spoken | null): Names {
  const known = knownNames();
  const stands = plan.ground.flatMap((plot) => plot.stands);
  const ownCrops = (farm?.crops ?? []).flatMap((crop) => (crop.name === null ? [] : [[crop.id, crop.name] as const]));
  const plants = new Map<string, string>([
    ...known.crops,
    ...known.covers,
    ...stands.map((stand) => [stand.what, stand.name] as const),
    ...ownCrops,
  ]);
  return {
    plots: new Map([
      ...(farm?.plots ?? []).map((plot) => [plot.id, plot.name] as const),
      ...plan.ground.map((plot) => [plot.plot, plot.name] as const),
    ]),
    plants,
    stands: new Map<string, string>([
      ...(farm?.stands ?? []).map((stand) => [stand.id, plants.get(stand.what) ?? stand.what] as const),
      ...stands.map((stand) => [stand.id, stand.name] as const),
    ]),
    stores: new Map((farm?.stores ?? []).map((store) => [store.id, store.name])),
    people: new Map((farm?.people ?? []).map((person) => [person.id, person.name])),
    organisms: new Map(known.organisms),
    common: new Map([...known.crops, ...known.covers].map(([id, name]) => [name, id])),
    courses: new Map((farm?.rotation?.courses ?? []).map((course) => [course.id, course.name])),
  };
}
