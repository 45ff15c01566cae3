/** Titles of derivations and words for what their doubt is made of, by code. */
import type { GroundDoubt, GroundWhyTitle, SupplyDoubt, SupplyWhyTitle } from '@leywright/planner';

const groundTitles: Readonly<Record<GroundWhyTitle, string>> = {
  net: 'Ground that can be cropped on {plot}',
  rest: '{previousName} to {stand} on {plot}: years between',
  nitrogen: 'Nitrogen left on {plot} in {year}',
  cover: 'Ground covered by {stand}, {week}',
  phosphate: 'Phosphate that leaves {plot} in a year',
  potash: 'Potash that leaves {plot} in a year',
  lime: 'Ground limestone that {plot} needs',
  humus: 'Humus balance of {plot}',
  carbon: 'Carbon in the topsoil of {plot} at the end of {year}',
  bare: 'Bare days on {plot} in the winter that ends in {winter}',
  account: 'Nitrogen in the ground of {plot} through {year}, counted day by day',
  water: 'Water in the ground of {plot} through {year}, counted day by day',
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
  'no-soil-sample': 'No soil sample is recorded: what the ground holds is not known.',
  'one-soil-sample': 'One sample gives no direction; a second, by the same method, would.',
  'samples-by-other-methods': 'Samples by other methods are left out: figures of two methods lie in no line.',
  'nothing-brought-in-known': 'Nothing brought in is recorded, so nothing is counted as brought.',
  'ph-uneven-in-field': 'Within a field the pH differs by 0.3 or so, and between laboratories by 0.1.',
  'soil-not-known': 'The soil of this plot is not written down, so the need for lime is not known.',
  'lime-since-sample-not-known': 'Lime given since the sample is not known.',
  'humus-is-an-index': 'The humus balance is an index for comparing rotations; it foretells no figure of a sample.',
  'crops-without-humus-figure': 'Some crops have no figure in the method and count as nothing.',
  'plant-carbon-by-practice': 'What plants leave in the ground is reckoned by rule of thumb from tables.',
  'clay-by-class': 'Clay is the middle of the soil’s class, not measured.',
  'carbon-mean-weather': 'The months are those of an average year.',
  'sample-before-plan': 'The sample is older than the years of this plan; its stock is taken to hold until they begin.',
  'climate-normals': 'The warmth is that of an average year at the nearest station, not of this one.',
  'soil-not-named': 'Nobody has said what soil this plot has: it is taken as loam.',
  'humus-not-sampled': 'The organic matter is not sampled here: the nitrogen in the soil is taken as 0.15 %.',
  'start-of-account-taken':
    'What lay in the ground three years before the plan is taken: full of water, 50 kg mineral nitrogen.',
  'plants-not-known': 'Something stands here that no table knows: its ground is counted as bare.',
};

const supplyTitles: Readonly<Record<SupplyWhyTitle, string>> = {
  area: 'Ground that {crop} needs in {year}',
  seed: 'Seed for {crop} in {year}',
  store: '{crop} in store at the end of {week}',
  box: 'Things in the box, {week}',
  hours: 'Hours of work, {week}',
  reach: 'Households this farm can feed, from {year} on',
};

const supplyDoubts: Readonly<Record<SupplyDoubt, string>> = {
  'yield-of-the-table': 'The yield is the table’s for a competent grower, not yours: a third more or less is usual.',
  'yield-is-an-average': 'Your yield is an average; single years lie a third above or below.',
  'grading-inside-yield': 'What is graded out is not told apart: the yield is taken as what is fit to sell.',
  'store-loss-recalled': 'What a store loses in a week is recalled or a rule of thumb; weigh, and it is known.',
  'store-loss-own': 'The weekly loss is your own figure and is taken to hold all winter.',
  'store-not-weighed': 'What is in store is reckoned, not weighed.',
  'seedbed-of-the-year': 'A cold or capped seedbed brings up fewer; the margin is for that.',
  'emergence-of-the-table': 'The share that comes up is the table’s, not from your lot of seed.',
  'yields-all-low-or-all-high':
    'The low and the high are what there would be if all crops failed or throve at once: the ends of what can be, not how likely it is.',
  'hours-of-the-table': 'Hours are orders of magnitude from tables; your own recorded hours are better.',
  'hours-all-low-or-all-high': 'The low and the high take every job at its quickest or its slowest at once.',
  'hours-leave-out': 'Washing, sorting the store, watering, repairs and office are not in it.',
  'hours-not-reckoned':
    'Hours are not set against it: field hours by course, delivery or the hours of the hands are not written down.',
  'hours-as-given': 'Hours by the hectare, the box and the week are the farm’s own.',
  'yields-as-planned': 'Yields are as planned in every year; a poor one feeds fewer.',
};

export const whyTitles: Readonly<Record<string, string>> = { ...groundTitles, ...supplyTitles };

export const doubtWords: Readonly<Record<string, string>> = { ...groundDoubts, ...supplyDoubts };
