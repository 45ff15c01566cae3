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
  'soil-not-named',
  'humus-not-sampled',
  'start-of-account-taken',
  'plants-not-known',
] as const;
export type GroundDoubt = (typeof groundDoubts)[number];

export const groundWhyTitles = ['net', 'rest', 'nitrogen', 'cover', 'bare', 'account', 'water'] as const;
export type GroundWhyTitle = (typeof groundWhyTitles)[number];
