/** Telling what can be proved, gathered under one word. */

export { packOf } from '../pack/pack.ts';
export * as shapes from '../shapes/proof.ts';
export { balanceSentence, linkSentence } from './proof-words.ts';
export { readTraceStart, tellBalance, tellMissing, tellTrace, traceStarts } from './tell-proof.ts';
