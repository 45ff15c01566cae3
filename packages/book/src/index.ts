export type * from './entry/entry.ts';
export { subjects } from './entry/entry.ts';
export type * from './farm/farm.ts';
export type * from './farm/land.ts';
export { featureKinds, plotKinds, wholePlot } from './farm/land.ts';
export type * from './farm/promise.ts';
export { roles } from './farm/promise.ts';
export type * from './farm/stand.ts';
export { standEnds, standKinds, standStates } from './farm/stand.ts';
