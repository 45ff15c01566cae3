/** Titles of derivations and words for what their doubt is made of, by code. */
import type { GroundDoubt, GroundWhyTitle } from '@leywright/planner';

const groundTitles: Readonly<Record<GroundWhyTitle, string>> = {
  net: 'Ground that can be cropped on {plot}',
  rest: '{previousName} to {stand} on {plot}: years between',
  nitrogen: 'Nitrogen left on {plot} in {year}',
  cover: 'Ground covered by {stand}, {week}',
  bare: 'Bare days on {plot} in the winter that ends in {winter}',
};

const groundDoubts: Readonly<Record<GroundDoubt, string>> = {
  'fixation-from-tables': 'What legumes fix is taken from tables, not measured here.',
  'stand-not-looked-at': 'Nobody has recorded how well the leys and covers took.',
  'yields-expected': 'Yields are expected ones; kilos recorded take their place.',
  'leaching-by-practice': 'What winter rain washes out is a rule of thumb by what stands on the ground.',
  'bare-ground-in-winter': 'Some of the ground lies bare in winter, and loses most in a wet one.',
  'ley-broken-before-winter': 'A ley turned in before winter may lose much of what it held.',
  'soil-supply-left-out': 'What the soil’s own humus gives and takes is not in this balance.',
  'strip-not-known':
    'Whether the law asks for a strip along the hedges is not known: write the field’s size and whether its hedges are five years old.',
  'organism-recorded-here':
    'The organism is recorded on this ground; where it has not been looked for, it may be as well.',
  'cover-published': 'The curve of its growth is published.',
  'cover-common-practice':
    'The curve of its growth is a rule of thumb: a quarter more or less time to full cover is usual.',
  'cover-derived': 'No growth curve is published for it; it is worked out from its stages and days to maturity.',
  'cover-unknown': 'No table knows this plant; it is drawn as a leafy crop.',
  'no-growth-on-short-days': 'Nothing is taken to grow on days under ten hours: a rule of growers, not a measurement.',
  'frost-day-expected': 'The day of frost is an expected one; it may be weeks earlier or later.',
  'climate-normals': 'The warmth is that of an average year at the nearest station, not of this one.',
};

export const whyTitles: Readonly<Record<string, string>> = { ...groundTitles };

export const doubtWords: Readonly<Record<string, string>> = { ...groundDoubts };
