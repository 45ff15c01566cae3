/** Proof, gathered under one word for who is outside: the way of the goods, traced both ways, weighed up, recalled. */
export { balanceOf, balanceTerms, usualBandShare, yieldCheck } from './balance.ts';
export { flowKinds, linkFaultCodes } from './chain.ts';
export { followGoods } from './follow.ts';
export { cropNameOf, cropsBetween, farmYieldCheck, followFarm } from './follow-farm.ts';
export { poolOf } from './following.ts';
export { statusOn } from './status.ts';
export { forwardStarts, groundYears, recallOf, traceBack, traceForward } from './trace.ts';
