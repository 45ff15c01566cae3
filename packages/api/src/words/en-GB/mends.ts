/** What could be done about a finding, by the code of the mend. */
import type { BookMendCode, GroundMendCode } from '@leywright/planner';
import { promiseMendWords } from './mends-promise.ts';

const groundMendWords: Readonly<Record<GroundMendCode, string>> = {
  'move-to-year': 'Grow {stand} there in {year} or later.',
  'move-to-plot': 'Move {stand} to {plot} for {year}.',
  'give-reason': 'Say why it is so, and keep it.',
  'end-earlier': 'Clear {stand} by {on}.',
  'start-later': 'Start {stand} on {on} or later.',
  'mark-undersown': 'Mark {stand} as undersown in {host}.',
  'move-to-free-ground': 'Move {stand} to ground on {plot} that is free then.',
  'correct-plot-or-dates': 'Correct the plot, the beds or the dates of {stand}.',
  'sow-alone': 'Sow {stand} alone, once the ground is free.',
  'name-host': 'Name the crop that {stand} is sown into.',
  'undersow-between': 'Sow {stand} between {from} and {to}.',
  'move-to-tunnel': 'Move {stand} to {plot}.',
  'sow-between': 'Sow or plant {stand} between {from} and {to}.',
  'sow-by': 'Sow {stand} by {on}.',
  'take-hardier-cover': 'Sow {cover} instead, by {on}.',
  'sow-cover-by': 'Sow {cover} by {on}.',
  'undersow-crop': 'Undersow {stand} with {cover}.',
  'give-course': 'Give {plot} its course for {year}.',
  'take-out-of-rotation': 'Take {plot} out of the rotation, if it stays as it is.',
  'write-status': 'Write down whether {plot} is organic or in conversion, and since when.',
  'turn-in-earlier': 'Turn in {stand} by {on}.',
  'plant-after-summer': 'Plant {stand} after midsummer, or put it in another course.',
  'net-crop': 'Keep {stand} under net from the day it comes up or is planted.',
  'lengthen-ley': 'Let the ley stand a year longer on {plot}.',
  'undersow-more': 'Undersow more of the crops on {plot} with clover.',
  'look-at-stands': 'Look at how the leys and covers on {plot} took, and record it.',
  'record-weather': 'Record your own weather; a year of it takes the place of the normals.',
};

const bookMendWords: Readonly<Record<BookMendCode, string>> = {
  'choose-amendment': 'Choose the correction that is right.',
  'open-device': 'Open Leywright on {device} where there is signal.',
  'set-clock': 'Set the clock of {device}.',
  'name-stand': 'Say which stand the record belongs to.',
  'correct-record': 'Correct the record by a new one that names it.',
  'record-end': 'Record when it ends, or how long it is to stand.',
  'ask-for-record': 'Open Leywright on the device that made the record.',
  'write-rotation': 'Write the rotation, then agree it.',
};

export const mendWords: Readonly<Record<string, string>> = {
  ...groundMendWords,
  ...promiseMendWords,
  ...bookMendWords,
};
