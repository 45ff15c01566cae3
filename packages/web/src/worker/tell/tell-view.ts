/** A plan in words: what the pages show of it. */
import {
  doubtSentence,
  headlineOf,
  mendSentence,
  type Run as SpokenRun,
  sentenceRuns,
  speak,
  titleOf,
  type Voice,
  voiceOf,
  whyTitle,
} from '@leywright/api';
import type { Farm } from '@leywright/book';
import type { Day } from '@leywright/measures';
import type { Finding, Plan, Why } from '@leywright/planner';
import { dayAndMonth } from '../../look/head/year-weeks.ts';
import type { Sentence } from '../../look/page/figure.tsx';
import { words } from '../../words.ts';
import type { FarmView, ToldFinding, ToldWhy } from '../plan-source.ts';
import { sayDerivation } from './say-derivation.ts';
import { sayNames } from './say-names.ts';
import { tellHands } from './tell-hands.ts';

export function tellView(plan: Plan, farm: Farm): Omit<FarmView, 'records' | 'seenBefore'> {
  const voice = voiceOf(plan, farm);
  return {
    plan: sayNames(plan, voice),
    told: {
      headline: {
        ground: withLead(headlineOf(plan, 'ground', voice)),
        boxes: withLead(headlineOf(plan, 'boxes', voice)),
        day: withLead(headlineOf(plan, 'day', voice)),
        work: withLead(headlineOf(plan, 'work', voice)),
      },
      findings: plan.findings.map((finding) => tellFinding(finding, voice)),
      standing: standingOf(plan),
    },
    sizes: farm.promise?.sizes ?? [],
    shows: farm.about.shows,
    ...tellHands(plan, farm),
    near: farm.about.place.near,
    plants: plantsOn(plan, voice),
  };
}

/** What stands on the day of the plan, each with its plots, by name. */
function plantsOn(plan: Plan, voice: Voice): FarmView['plants'] {
  const plants = new Map<string, { readonly id: string; readonly name: string; readonly plots: string[] }>();
  for (const { plot, stands } of plan.ground)
    for (const { what, from, to } of stands) {
      if (from > plan.today || to <= plan.today) continue;
      const name = speak.plant(voice.names.plants.get(what) ?? what, voice);
      const plant = plants.get(what) ?? { id: what, name, plots: [] };
      plants.set(what, plant);
      if (!plant.plots.includes(plot)) plant.plots.push(plot);
    }
  return [...plants.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

export function tellFinding(finding: Finding, voice: Voice): ToldFinding {
  return {
    finding,
    lead: titleOf(finding, voice),
    body: withFigure(sentenceRuns(finding, voice), finding),
    mends: finding.mend.map((mend) => [{ text: mendSentence(mend, finding, voice) }]),
  };
}

/** Title: the figure itself; `about`: what it is of. Figures in the words are said as elsewhere. */
export function tellWhy(why: Why, plan: Plan, farm: Farm): ToldWhy {
  const voice = voiceOf(plan, farm);
  const doubt = why.doubt.map((code) => doubtSentence(code, voice));
  return {
    why: { ...sayDerivation(why, voice), doubt },
    title: figureText(why, voice),
    about: [{ text: `${whyTitle(why, voice)}.` }],
  };
}

function figureText({ value, low, high, unit }: Why, voice: Voice): string {
  if (unit === 'm2' && value !== null) return speak.area(value, voice);
  if (low !== null && high !== null && low !== high) return `${plain(low)} to ${plain(high)} ${unit}`.trim();
  return value === null ? words.why.notKnown : `${plain(value)} ${unit}`.trim();
}

function plain(figure: number): string {
  const digits = Math.abs(figure) >= 100 ? 0 : Math.abs(figure) >= 1 ? 1 : 2;
  return Number(figure.toFixed(digits)).toLocaleString('en-GB').replace('-', '−');
}

/** What comes before the first comma or stop is set strong. */
export function withLead(headline: string): Sentence {
  const end = headline.search(/[,.:]/);
  return end < 0 || end === headline.length - 1
    ? [{ text: headline, strong: true }]
    : [{ text: headline.slice(0, end + 1), strong: true }, { text: headline.slice(end + 1) }];
}

/** The first number of the sentence opens the sum behind the finding. */
function withFigure(runs: readonly SpokenRun[], { why, figures }: Finding): Sentence {
  const isNumber = (run: SpokenRun) => run.figure !== null && typeof figures[run.figure] === 'number';
  const opening = runs.find(isNumber) ?? runs.find((run) => run.figure !== null);
  return runs.map((run) => (why !== null && run === opening ? { text: run.text, figureId: why } : { text: run.text }));
}

function standingOf({ agreed, today }: Plan): string {
  if (agreed.state === 'none') return words.state.nothing;
  if (agreed.state === 'pencil') return words.state.pencil;
  return agreed.on === null ? words.state.agreed : `${words.state.agreed}, ${dayOf(agreed.on, today)}`;
}

/** "9 January", with its year when that is not this one. */
function dayOf(day: Day, today: Day): string {
  return day.slice(0, 4) === today.slice(0, 4) ? dayAndMonth(day) : `${dayAndMonth(day)} ${day.slice(0, 4)}`;
}
