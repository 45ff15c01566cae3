/** The farm's tables as `set` entries write them: where their rows lie, what a row's key is, and its shape. */
import type * as z from 'zod';
import type { Subject } from '../entry/entry.ts';
import {
  aboutShape,
  featureShape,
  fieldShape,
  markShape,
  partShape,
  plotShape,
  soilShape,
} from '../shapes/land-shapes.ts';
import { id } from '../shapes/plain-shapes.ts';
import {
  personShape,
  priceShape,
  promiseShape,
  storeLossShape,
  storeShape,
  weatherShape,
} from '../shapes/promise-shapes.ts';
import { cropShape, restShape, rotationShape, standShape } from '../shapes/stand-shapes.ts';
import {
  absenceShape,
  ownJobShape,
  seedAuthorisationShape,
  seedLotShape,
  seedOfferShape,
} from '../shapes/work-shapes.ts';
import type { Farm } from './farm.ts';

/** Tables that are lists of rows. */
export const listSubjects = [
  'fields',
  'plots',
  'parts',
  'features',
  'stands',
  'rests',
  'crops',
  'prices',
  'stores',
  'storeLosses',
  'people',
  'absences',
  'ownJobs',
  'seedLots',
  'seedOffers',
  'seedAuthorisations',
  'soilSamples',
  'weather',
  'marks',
] as const satisfies readonly Subject[];
export type ListSubject = (typeof listSubjects)[number];
export type RowOf<S extends ListSubject> = Farm[S][number];

/** Joins the pieces of a key; no id and no day holds it. */
const bar = '|';

const keys: { readonly [S in ListSubject]: (row: RowOf<S>) => string } = {
  fields: (row) => row.id,
  plots: (row) => row.id,
  parts: (row) => row.id,
  features: (row) => row.id,
  stands: (row) => row.id,
  rests: (row) => row.id,
  crops: (row) => row.id,
  prices: (row) => [row.crop, row.unit, row.from ?? ''].join(bar),
  stores: (row) => row.id,
  storeLosses: (row) => [row.crop, row.from ?? ''].join(bar),
  people: (row) => row.id,
  absences: (row) => [row.person, row.from].join(bar),
  ownJobs: (row) => [row.what ?? '', row.job].join(bar),
  seedLots: (row) => row.lot,
  seedOffers: (row) => row.id,
  seedAuthorisations: (row) => row.id,
  soilSamples: (row) => [row.plot, row.takenOn, row.method].join(bar),
  weather: (row) => row.day,
  marks: (row) => [row.organism, row.plot, row.foundOn, row.span.fromShare, row.span.toShare].join(bar),
};

/** The key under which a row of a table is known. */
export function keyOf<S extends ListSubject>(subject: S, row: RowOf<S>): string {
  return keys[subject](row);
}

export const subjectShapes: { readonly [S in Subject]: z.ZodType } = {
  about: aboutShape,
  fields: fieldShape,
  plots: plotShape,
  parts: partShape,
  features: featureShape,
  stands: standShape,
  rotation: rotationShape,
  rests: restShape,
  promise: promiseShape,
  crops: cropShape,
  prices: priceShape,
  stores: storeShape,
  storeLosses: storeLossShape,
  people: personShape,
  absences: absenceShape,
  ownJobs: ownJobShape,
  seedLots: seedLotShape,
  seedOffers: seedOfferShape,
  seedAuthorisations: seedAuthorisationShape,
  soilSamples: soilShape,
  weather: weatherShape,
  marks: markShape,
  aliases: id(),
};

export function isListSubject(subject: Subject): subject is ListSubject {
  return (listSubjects as readonly Subject[]).includes(subject);
}
