/** The contract of Leywright: shapes of requests and answers, and the sentences for every code and figure, by language. */
export { findingsPage } from './findings-page.ts';
export type { Pack, PackAsk, PackPart } from './pack/part.ts';
export * as told from './proof/front.ts';
export { type ToldCovers, tellCovers } from './rotation/tell-covers.ts';
export { behindSentences, type ToldRotation, tellRotation } from './rotation/tell-rotation.ts';
export { roundForJson } from './round.ts';
export { schemaFiles } from './schema-files.ts';
export * as findingShapes from './shapes/finding.ts';
export * as httpShapes from './shapes/http.ts';
export * as peopleShapes from './shapes/people.ts';
export * as planShapes from './shapes/plan.ts';
export type { ToldBalance, ToldTrace } from './shapes/proof.ts';
export * as rotationShapes from './shapes/rotation.ts';
export * as toldShapes from './shapes/told.ts';
export * as workShapes from './shapes/work.ts';
export { speak } from './speak.ts';
export { type ToldFinding, tellFinding, tellFindings, tellWhy } from './tell.ts';
export { type Language, languages } from './words/languages.ts';
export {
  causeOf,
  doubtSentence,
  headlineOf,
  mendSentence,
  problemSentence,
  refusalSentence,
  sentenceOf,
  sentenceRuns,
  titleOf,
  whyTitle,
} from './words/sentences.ts';
export type { Figures, Run } from './words/template.ts';
export { plainVoice, type Spoken, type Voice, voiceOf } from './words/voice.ts';
export { type HeadlinePlace, headlinePlaces } from './words/word-kinds.ts';
export * as workWords from './work/on-work.ts';
