/** What the doubt of a figure of the ground is made of; words live in api. */
import { nitrogenDoubts } from '../soil/nitrogen-year.ts';

export const groundDoubts = [
  ...nitrogenDoubts,
  'strip-not-known',
  'organism-recorded-here',
  'cover-published',
  'cover-common-practice',
  'cover-derived',
  'cover-unknown',
  'no-growth-on-short-days',
  'frost-day-expected',
  'climate-normals',
] as const;
export type GroundDoubt = (typeof groundDoubts)[number];

export const groundWhyTitles = ['net', 'rest', 'nitrogen', 'cover', 'bare'] as const;
export type GroundWhyTitle = (typeof groundWhyTitles)[number];
