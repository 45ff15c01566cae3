/** The science of the trade: reference tables with their sources, and one file a model. Knows no farm, clock or file. */
export type { DemandFigure, Rule, Source } from './reference/book-columns.ts';
export { type CellSource, type ReferenceCell, referenceCell } from './reference/cell.ts';
export type { Cover, MixPart, StorageRow, UndersowWeeks } from './reference/cover-columns.ts';
export type { Crop } from './reference/crop-columns.ts';
export type { Habitat, LabourRate, RestInterval, WeedPass } from './reference/ground-columns.ts';
export type { Pest, PestModel } from './reference/pest-columns.ts';
export { type ReferenceProblem, referenceProblems } from './reference/problems.ts';
export { type Reference, reference } from './reference/reference.ts';
export type { HowKnown } from './reference/ways-of-knowing.ts';
