/** The contract of Leywright: shapes of requests and answers, and the sentences for every code and figure, by language. */
export { roundForJson } from './round.ts';
export { finding, toldFinding, toldWhy, why } from './shapes/finding.ts';
export { plan } from './shapes/plan.ts';
export { type HeadlinePlace, headlinePlaces } from './words/en-GB/headlines.ts';
export { type Language, languages } from './words/languages.ts';
export {
  causeOf, doubtSentence, headlineOf, mendSentence, problemSentence, refusalSentence, sentenceOf, sentenceRuns, titleOf, whyTitle,
} from './words/sentences.ts';
export type { Figures, Run } from './words/template.ts';
export { plainVoice, type Spoken, type Voice, voiceOf } from './words/voice.ts';
