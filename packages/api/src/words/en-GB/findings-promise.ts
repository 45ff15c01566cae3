/** Words for what is found between the promise, the stores and the hands. */
import type { FindingCode } from '@leywright/planner';
import type { FindingWords } from '../word-kinds.ts';
import type { BookCode } from './findings-book.ts';
import type { GroundCode } from './findings-ground.ts';

export const promiseFindingWords: Readonly<Record<Exclude<FindingCode, GroundCode | BookCode>, FindingWords>> = {
  'box-short': {
    title: 'The box is short',
    sentence:
      'The box is short[ for {weeks}, from {firstWeek} to {lastWeek}][ in {onlyWeek}]: at worst {items:number} of {promisedItems}[, without {missing:list}].',
    cause: 'In these weeks neither the field nor the store has enough of what was promised.',
    remedy:
      'Grow more of what is missing, store more, name another crop for its place, or promise less in those weeks.',
  },
  'crop-not-on-ground': {
    title: 'Promised and not grown',
    sentence: '{crop} is promised[ from {fromWeek}] and no stand of it is planned for {year}.',
    cause: 'A place in the box names this crop alone, and no plot carries it in time.',
    remedy: 'Plan a stand of it, or name another crop for its place.',
  },
  'ground-too-small': {
    title: 'Too little ground',
    sentence: '{crop} needs {needM2} in {year} and has {haveM2}: short by {shortM2}.',
    cause:
      'The promise, divided by what packing, store and grading leave and by the yield, asks for more ground than it is given.',
    remedy: 'Give it more ground, or promise less of it.',
  },
  'store-runs-out': {
    title: 'The store runs out',
    sentence: '{crop} from store fills every box until {lastFullWeek}; after that {gapWeeks} go without.',
    cause:
      'What went into the store, less its weekly loss, does not reach to the end of the promise or to the new crop.',
    remedy: 'Store more of it, lose less, or end its weeks in the box earlier.',
  },
  'store-over-full': {
    title: 'The store is over-full',
    sentence: '{store} would hold {kg} in {week} and has room for {capacityKg}.',
    cause: 'More is lifted for the store than it can take.',
    remedy: 'Store less, or give it more room.',
  },
  'no-store-for-crop': {
    title: 'No store for a crop',
    sentence: '{crop} is promised out of store and no store is named for it.',
    cause: 'Without a store the crop is reckoned only for the weeks it stands in the field.',
    remedy: 'Name a store for it, or promise it from the field alone.',
  },
  'yield-implausible': {
    title: 'A yield out of the ordinary',
    sentence: '{crop}: you plan on {yieldTHa}; the reference has [from {lowTHa} ][to {highTHa}].',
    cause: 'A slip in the unit is the usual reason. If it is right, keep it: your own figure is used.',
    remedy: 'Look at the unit; keep it if it is right.',
  },
  'no-yield-known': {
    title: 'No yield known',
    sentence: 'No yield is known for {crop}, so the ground it needs cannot be worked out.',
    cause: 'It is neither in the reference table nor among your own crops with a yield.',
    remedy: 'Give your own yield, or say which crop of the reference it is like.',
  },
  'households-over-reach': {
    title: 'More households than the farm feeds',
    sentence:
      'You promise {promisedHouseholds}; this farm feeds {reachHouseholds}[ in {year}][, and {bindingName} is what holds it back].',
    cause: 'One course has too little ground for its share of the promise, or there are too few hands.',
    remedy: 'Promise to fewer, give the course that holds it back more ground, or find more hands.',
  },
  'hours-over-hands': {
    title: 'More work than hands',
    sentence: 'The work asks for {hoursH} in {week} and the hands there are have {handsH}[; so for {weeks} on end].',
    cause: 'Jobs that have to be done in the same weeks ask for more hours than the people on the list have.',
    remedy: 'Move what can wait, find hands for those weeks, or grow less of what asks for them.',
  },
  'hands-unknown': {
    title: 'Hours of the hands not known',
    sentence: 'Nobody’s hours are written down, so the work of {hoursH} in {year} cannot be set against them.',
    cause: 'What is not given is not known; it is not taken as nought.',
    remedy: 'Write down who works and for how many hours.',
  },
};
