/** Words for what is found on the ground: stands, cover, rests. */
import type { FindingCode } from '@leywright/planner';
import type { FindingWords } from '../word-kinds.ts';

export type GroundCode = Extract<
  FindingCode,
  | 'stands-overlap'
  | 'stand-outside-plot'
  | 'undersown-without-host'
  | 'undersow-out-of-window'
  | 'tunnel-crop-outside'
  | 'sown-out-of-season'
  | 'cover-sown-too-late'
  | 'bare-in-leaching-season'
  | 'plot-without-course'
  | 'status-unknown'
  | 'family-back-too-soon'
  | 'organism-back-too-soon'
  | 'wait-after-cover-too-short'
  | 'host-too-near'
  | 'nitrogen-drawn-down'
  | 'nitrogen-undecided'
  | 'climate-assumed'
>;

export const groundFindingWords: Readonly<Record<GroundCode, FindingWords>> = {
  'stands-overlap': {
    title: 'Two stands on the same ground',
    sentence: '{stand} and {other} stand on the same ground on {plot}[, {areaM2} of it][, from {from} to {to}].',
    cause: 'Only an undersown stand may share ground with another. One of the two has the wrong dates, beds or plot.',
    remedy:
      'End the one earlier, start the other later, give each its own beds, or mark the one as undersown in the other.',
  },
  'stand-outside-plot': {
    title: 'A stand outside its plot',
    sentence: '{stand} from {from} stands where {plot} has no ground for it.',
    cause: 'The plot is not on the list, its beds do not reach so far, or it was not part of the farm on those days.',
    remedy: 'Correct its plot, its beds or its dates.',
  },
  'undersown-without-host': {
    title: 'Undersown, and nothing to sow it into',
    sentence: '{stand} on {plot} is to be undersown on {from}, and the crop it goes into does not stand there then.',
    cause: 'An undersown stand needs its crop on the same ground on the day it is sown.',
    remedy: 'Name the crop it is sown into, or sow it alone once the ground is free.',
  },
  'undersow-out-of-window': {
    title: 'Undersown too early or too late',
    sentence:
      '{stand} is sown into {host} on {plot} {weeks} after planting; the time for it is {lowWeeks:number} to {highWeeks} after.',
    cause: 'Sown too early it smothers the crop; sown too late it finds no light and does not take.',
    remedy: 'Move the undersowing into its weeks.',
  },
  'tunnel-crop-outside': {
    title: 'A tunnel crop outdoors',
    sentence: '{stand} is a crop for the tunnel and stands outdoors on {plot} from {from}.',
    cause: 'The reference grows this crop under cover only; outdoors its yields do not hold.',
    remedy: 'Move it to a tunnel, or correct the plot.',
  },
  'sown-out-of-season': {
    title: 'Sown or planted out of season',
    sentence: '{stand} on {plot} starts on {from}; its season is {windowFrom} to {windowTo}.',
    cause: 'Outside its season a crop bolts, rots or does not ripen, and the yields of the reference do not hold.',
    remedy: 'Move it into its season, or say why it is right here.',
  },
  'cover-sown-too-late': {
    title: 'A cover sown too late',
    sentence: '{stand} on {plot} is sown on {from}; after {lastOn} it seldom covers the ground by winter.',
    cause: 'What is sown late has too little warmth left to close over the soil before the rains of winter.',
    remedy: 'Sow it earlier, undersow it in the crop before, or take a hardier cover.',
  },
  'bare-in-leaching-season': {
    title: 'Ground bare in the wet season',
    sentence: '{areaM2} of {plot} lies bare from {from} to {to}, {leachingDays} of that in the wet season.',
    cause: 'Rain on bare ground in autumn and winter washes nitrogen below the roots and beats the soil down.',
    remedy:
      'Sow a cover in time, undersow the crop before it, or clear that crop earlier. Where it had to be, give the reason.',
  },
  'plot-without-course': {
    title: 'A plot without a course',
    sentence: '{plot} goes round with the rotation and has no course to start on.',
    cause: 'The rotation cannot say what stands there until the plot has a course for its first year.',
    remedy: 'Give it a course, or take it out of the rotation.',
  },
  'status-unknown': {
    title: 'Organic or in conversion: not known',
    sentence: 'It is not written whether {plot} is organic or in conversion.',
    cause: 'What grows on ground in conversion may not be sold as organic; ask your certifier.',
    remedy: 'Write down its status and since when.',
  },
  'family-back-too-soon': {
    title: 'A family back too soon',
    sentence:
      '{stand} on {plot} in {year} comes[ {laterYears} after {previousName} ({previousYear})][ in the same year ({sameYear}) as {previousName}], and {ruleSaid} rest {needYears}[: {ruleFirstYear} is the first year for it][; with every rest kept, {allFirstYear} is the first year for it].',
    cause: 'Pests and diseases that live on one family wait in the soil; the rest lets them run down.',
    remedy: 'Grow it a year later or on another plot; where it has to be, give the reason.',
  },
  'organism-back-too-soon': {
    title: 'A host back too soon',
    sentence:
      '{stand} on {plot} in {year} is a host of {ruleSaid}[, {laterYears} after {previousName} ({previousYear})][, in the same year ({sameYear}) as {previousName}]; the rest is {needYears}[, so {ruleFirstYear} is the first year for it][; with every rest kept, {allFirstYear} is the first year for it].',
    cause: 'The organism outlasts short rests in the soil. Where it has been found, the rest is longer.',
    remedy: 'Grow it a year later or on another plot; where it has to be, give the reason.',
  },
  'wait-after-cover-too-short': {
    title: 'Too soon after a cover',
    sentence:
      '{stand} on {plot} follows {previousName} after {days}[; the wait is {needDays} at least][; {ruleSaid} from it may still be in that ground].',
    cause: 'Green matter just turned in ties up nitrogen, feeds seed-eating maggots and hinders small seed.',
    remedy: 'Turn the cover in earlier, or plant later.',
  },
  'host-too-near': {
    title: 'A host too near',
    sentence: '{stand} on {plot} stands {distanceM} from {previousName}[ on {otherPlot}]; {needM} is the least.',
    cause: 'The pest walks or flies from last year’s ground to this year’s crop when they lie close together.',
    remedy: 'Put it further off, or keep it under net.',
  },
  'nitrogen-drawn-down': {
    title: 'Nitrogen drawn down',
    sentence:
      '{plot} is drawn down: over {overYears} from {year} its nitrogen balance is {lowKgHa} to {highKgHa} a year.',
    cause: 'More leaves with the crops and the winter rain than the leys and covers bring in.',
    remedy: 'Let the ley stand longer, undersow more, or follow with a crop that needs less.',
  },
  'nitrogen-undecided': {
    title: 'Nitrogen: could go either way',
    sentence:
      'Whether {plot} gains or loses nitrogen is not known: over {overYears} from {year} the balance is {lowKgHa} to {highKgHa} a year.',
    cause: 'The balance is wide because what the leys fix and the rain takes is not measured here.',
    remedy: 'Look at how leys and covers took and record it; a soil sample says more.',
  },
  'climate-assumed': {
    title: 'Weather taken from elsewhere',
    sentence:
      'The plan reckons with the weather of {station}[, {distanceKm} away][, {period}][; {ownDays} of your own are recorded].',
    cause: 'Until the farm’s own weather is recorded, dates and cover follow the nearest published normals.',
    remedy: 'Record your own weather.',
  },
};
