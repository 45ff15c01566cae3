/** What the doubt of a figure of the ground is made of; words live in api. */
import { limeDoubts } from '../fertility/acidity.ts';
import { carbonDoubts } from '../fertility/carbon-stock.ts';
import { humusDoubts } from '../fertility/humus.ts';
import { nutrientDoubts } from '../fertility/nutrients.ts';
import { nitrogenDoubts } from '../soil/nitrogen-year.ts';
import { fertilityWords } from './why-fertility.ts';

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
  ...nutrientDoubts,
  ...limeDoubts,
  ...humusDoubts,
  ...carbonDoubts,
] as const;
export type GroundDoubt = (typeof groundDoubts)[number];

export const groundWhyTitles = [
  'net',
  'rest',
  'nitrogen',
  'cover',
  'bare',
  'account',
  'water',
  ...fertilityWords,
] as const;
export type GroundWhyTitle = (typeof groundWhyTitles)[number];
