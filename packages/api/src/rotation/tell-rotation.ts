/** A proposed rotation with its words, as `leywright rotation --json` and the HTTP interface answer. */
import type { Farm } from '@leywright/book';
import type { Day } from '@leywright/measures';
import {
  type CellWhy,
  type Finding,
  type Halving,
  type PlotConflict,
  type ProposeAnswer,
  planFarm,
  type RotationBehind,
  type RotationProposal,
  rotations,
  type SoftRule,
} from '@leywright/planner';
import { tellFinding } from '../tell.ts';
import { voiceOf } from '../words/voice.ts';
import { liftedSentence, type RotationNames, ruleSentence } from './rule-words.ts';

export interface TellRotation {
  readonly farm: Farm;
  readonly today: Day;
}

const nothing = {
  'no-rotation': 'This farm has no rotation: give it courses first.',
  'no-plots': 'No plot of this farm rotates in these years.',
  'too-few-courses': 'A rotation needs at least two courses.',
} as const;

export function tellRotation(answer: ProposeAnswer, at: TellRotation) {
  const names = namesOf(at.farm);
  const head = { farm: at.farm.about.name, today: at.today };
  switch (answer.kind) {
    case 'nothing-to-plan':
      return { ...head, kind: answer.kind, sentence: nothing[answer.why] };
    case 'proposal':
      return { ...head, kind: answer.kind, sentence: statusSentence(answer), ...told(answer, names, at) };
    case 'no-plan': {
      const conflicts = answer.conflicts.map((conflict) => toldConflict(conflict, answer.asked, names));
      const { partial } = answer;
      const where = conflicts.map((one) => one.name).join(', ');
      return {
        ...head,
        kind: answer.kind,
        sentence: `There is no rotation that keeps every rule. On ${where} these rules conflict:`,
        conflicts,
        partial: partial === null ? null : told(partial, names, at),
      };
    }
  }
}

export type ToldRotation = ReturnType<typeof tellRotation>;

/** How good it is, and how that is known. */
export function statusSentence({ answer }: Pick<RotationProposal, 'answer'>): string {
  if (answer.status === 'optimal')
    return 'Proven best: no rotation that keeps every rule comes nearer to what was asked.';
  const gap = Number.isFinite(answer.gapShare) ? `${(100 * answer.gapShare).toFixed(1)} %` : null;
  const end = gap === null ? 'how far from the best is not known' : `at most ${gap} from the best there can be`;
  if (answer.status === 'stopped') return `Stopped: the best so far, ${end}.`;
  if (answer.status === 'time') return `The best found in the time given, ${end}.`;
  return `Lawful, but not proven (the solver failed): ${end}.`;
}

function told(proposal: RotationProposal, names: RotationNames, at: TellRotation) {
  const { asked, answer } = proposal;
  const lastYear = asked.firstYear + asked.problem.years - 1;
  return {
    firstYear: asked.firstYear,
    lastYear,
    status: answer.status,
    score: answer.totalScore,
    bound: Number.isFinite(answer.boundScore) ? answer.boundScore : null,
    gapShare: Number.isFinite(answer.gapShare) ? answer.gapShare : null,
    seconds: answer.elapsedS,
    areasBy: asked.areasBy,
    costs: answer.score.byRule,
    leftOut: asked.leftOut,
    plots: asked.plots.flatMap((plot, plotIndex) =>
      asked.problem.plots[plotIndex]?.isRotated === true
        ? [
            {
              plot: plot.id,
              letter: plot.letter,
              name: plot.name,
              years: yearsOf(proposal, plotIndex, names),
              sequences: sequencesOf(proposal, plotIndex),
            },
          ]
        : [],
    ),
    pencil: {
      placed: (proposal.farm.rotation?.placed ?? []).filter((one) => one.state === 'pencil'),
      stands: proposal.farm.stands.slice(at.farm.stands.length),
    },
    findings: toldFindings(proposal.findings, proposal.farm, { today: at.today, lastYear }),
  };
}

const mostSequences = 5;

/** The best orders of courses for one plot while the others stay as proposed, with what the whole plan would cost more. */
function sequencesOf({ asked, answer }: RotationProposal, plotIndex: number) {
  const ask = { plan: answer.plan, plotIndex, most: mostSequences };
  return rotations.bestSequences(asked.problem, ask).map(({ courses, extraScore }) => ({
    courses: courses.map((course) => (course === rotations.heldCourse ? null : course)),
    extraScore,
  }));
}

/** What stands behind a proposal, in words. */
export function behindSentences({ prices, halving }: RotationBehind): readonly string[] {
  return [
    ...prices
      .filter(({ price }) => price.priceScore > 0.005)
      .map(({ rule, price }) => {
        const sure = price.isProven ? '' : ' (as far as was found)';
        return `Without "${softRuleWords[rule]}" all else would cost ${price.liftedScore.toFixed(2)} instead of ${price.keptScore.toFixed(2)}${sure}.`;
      }),
    ...(halving === null ? [] : [halvingSentence(halving)]),
  ];
}

export const softRuleWords: Readonly<Record<SoftRule, string>> = {
  area: 'areas near what is asked',
  balance: 'even areas from year to year',
  order: 'the standard order',
  cover: 'cheap covers and places',
  stability: 'few changes against what is agreed',
  split: 'halves alike',
};

function halvingSentence({ wholeScore, halvesScore, plots, isProven }: Halving): string {
  const gain = wholeScore - halvesScore;
  const found = isProven ? '' : ', as far as was found';
  if (gain < 0.01) return `Halving plots would gain nothing${found}.`;
  return `Halving ${plots.join(', ')} would bring the cost from ${wholeScore.toFixed(2)} to ${halvesScore.toFixed(2)}${found}.`;
}

function yearsOf({ asked, answer, cells }: RotationProposal, plotIndex: number, names: RotationNames) {
  const { problem, firstYear } = asked;
  const plot = problem.plots[plotIndex];
  const whys = rotations.cellChoices(problem, { plan: answer.plan, plotIndex });
  return whys.map((why) => {
    const cell = cells.find((one) => one.plot === plot?.id && one.year === firstYear + why.year);
    const agreed = plot?.agreed?.[why.year] ?? null;
    const course = cell?.course ?? null;
    return {
      year: firstYear + why.year,
      course,
      name: course === null ? null : names.course(course),
      agreed,
      moved: agreed !== course,
      pinned: plot?.pins[String(why.year)] !== undefined,
      others: othersOf(why, names),
      barred: why.barred.filter((one) => one !== rotations.heldCourse).map(names.course),
    };
  });
}

function othersOf(why: CellWhy, names: RotationNames) {
  return why.others
    .filter((one) => one.course !== rotations.heldCourse)
    .map((one) => ({ course: one.course, name: names.course(one.course), extraScore: one.extraScore }));
}

function toldConflict({ plot, lifted }: PlotConflict, asked: RotationProposal['asked'], names: RotationNames) {
  return {
    plot,
    name: names.plot(plot),
    rules: lifted.map((one) => ({
      rule: one.rule.kind,
      sentence: ruleSentence(one.rule, { asked, plot, names }),
      frees: liftedSentence(one),
      isEnough: one.isEnough,
      sequences: one.sequences,
    })),
  };
}

function toldFindings(
  findings: readonly Finding[],
  farm: Farm,
  { today, lastYear }: { readonly today: Day; readonly lastYear: number },
) {
  const voice = voiceOf(planFarm(farm, { today, toYear: lastYear }), farm);
  return findings.map((finding) => tellFinding(finding, voice));
}

function namesOf({ rotation, plots }: Farm): RotationNames {
  const courses = new Map((rotation?.courses ?? []).map((one) => [one.id as string, one.name]));
  const byPlot = new Map(plots.map((one) => [one.id as string, one.name]));
  return {
    course: (id) => (id === rotations.heldCourse ? 'What stands there' : (courses.get(id) ?? id)),
    plot: (id) => byPlot.get(id) ?? id,
  };
}
