/** Findings and derivations with their words beside them, as every front end hands them on. */
import type { Finding, Plan, Why } from '@leywright/planner';
import { causeOf, doubtSentence, mendSentence, sentenceOf, titleOf, whyTitle } from './words/sentences.ts';
import type { Voice } from './words/voice.ts';

export interface ToldFinding extends Finding {
  readonly title: string;
  readonly sentence: string;
  readonly cause: string;
  readonly mends: readonly string[];
}

export function tellFinding(finding: Finding, voice: Voice): ToldFinding {
  const mends = finding.mend.map((mend) => mendSentence(mend, finding, voice));
  return {
    ...finding,
    title: titleOf(finding, voice),
    sentence: sentenceOf(finding, voice),
    cause: causeOf(finding, voice),
    mends,
  };
}

/** All findings of a plan, as `check --json` and `GET …/findings` answer. */
export function tellFindings(plan: Plan, voice: Voice) {
  const { findings } = plan;
  const toPutRight = findings.filter((finding) => finding.gravity === 'put-right').length;
  return {
    farm: plan.farm.name,
    today: plan.today,
    year: plan.year,
    toPutRight,
    findings: findings.map((finding) => tellFinding(finding, voice)),
  };
}

export function tellWhy(why: Why, voice: Voice) {
  return { ...why, titleWords: whyTitle(why, voice), doubtWords: why.doubt.map((code) => doubtSentence(code, voice)) };
}
