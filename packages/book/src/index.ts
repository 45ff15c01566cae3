/** The farm's book: what a farm is, the entries that record it, and the open folder it is kept and handed on in. */

export { bodyDigest, canonicalJson, chain, plainEntry, type Receipt, withdrawBody } from './entry/chain.ts';
export type * from './entry/entry.ts';
export { subjects } from './entry/entry.ts';
export { newEntryId } from './entry/entry-id.ts';
export { instantMs } from './entry/instant.ts';
export { newestVersion, readEntry, readReceivedEntry } from './entry/read-entry.ts';
export { type BookEnd, type Breach, type Verification, verifyBook } from './entry/verify-book.ts';
export { aboutFarm, conventionsAt, defaultConventions, defaultShows, emptyFarm } from './farm/defaults.ts';
export type * from './farm/farm.ts';
export type * from './farm/land.ts';
export { featureKinds, plotKinds, wholePlot } from './farm/land.ts';
export type * from './farm/promise.ts';
export { roles } from './farm/promise.ts';
export type * from './farm/stand.ts';
export { standEnds, standKinds, standStates } from './farm/stand.ts';
export { keyOf, type ListSubject, listSubjects, type RowOf } from './farm/subjects.ts';
export { folderFiles } from './folder/file-names.ts';
export { type Problem, type ProblemCode, problemCodes } from './folder/problem.ts';
export { type FolderReading, readFarmFolder } from './folder/read-folder.ts';
export { writeFarmFolder } from './folder/write-folder.ts';
export { readFarmZip, zipFolder } from './folder/zip.ts';
export type { KnownNames } from './names/known-names.ts';
export { nearest } from './names/nearest.ts';
export { asKnownOn } from './replay/as-known-on.ts';
export { entriesOf, type Stamp } from './replay/entries-of.ts';
export { type BookFinding, type BookFindingCode, bookFindingCodes } from './replay/findings.ts';
export { type Replayed, type ReplayOptions, replay } from './replay/replay.ts';
