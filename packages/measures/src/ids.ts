import type { Branded } from './brand.ts';

export type FarmId = Branded<string, 'FarmId'>;
export type FieldId = Branded<string, 'FieldId'>;
export type PlotId = Branded<string, 'PlotId'>;
export type PartId = Branded<string, 'PartId'>;
export type StandId = Branded<string, 'StandId'>;
export type SuccessionId = Branded<string, 'SuccessionId'>;
export type CropId = Branded<string, 'CropId'>;
export type CoverId = Branded<string, 'CoverId'>;
export type CourseId = Branded<string, 'CourseId'>;
export type StoreId = Branded<string, 'StoreId'>;
export type PersonId = Branded<string, 'PersonId'>;
export type DeviceId = Branded<string, 'DeviceId'>;
export type EntryId = Branded<string, 'EntryId'>;
/** The name under which a shown figure can be asked for its sum and source. */
export type FigureId = Branded<string, 'FigureId'>;

export type Id =
  | FarmId
  | FieldId
  | PlotId
  | PartId
  | StandId
  | SuccessionId
  | CropId
  | CoverId
  | CourseId
  | StoreId
  | PersonId
  | DeviceId
  | EntryId
  | FigureId;

export const longestIdChars = 64;

// Letters of any language: a plot may be called "österfeld". A colon joins the parts of a figure's id.
const idShape = /^[\p{L}\p{N}]+(?:[-._:][\p{L}\p{N}]+)*$/u;

/**
 * Reads an id that a person or a file gave: letters and digits in groups joined by `-`, `_`, `.` or `:`, at most 64 characters.
 * Null when it is anything else. Spaces around it are dropped; what is inside is never mended.
 */
export function readId<T extends Id>(text: string): T | null {
  const trimmed = text.trim().normalize('NFC');
  return trimmed.length <= longestIdChars && idShape.test(trimmed) ? (trimmed as T) : null;
}

/** An id that our own code wrote. Throws if it is not one. */
export function asId<T extends Id>(text: string): T {
  const id = readId<T>(text);
  if (id === null) throw new Error(`"${text}" is not an id.`);
  return id;
}
