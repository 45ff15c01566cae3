/** Words for what is found in the book itself. */
import type { BookFindingCode } from '@leywright/book';
import type { FindingWords } from '../word-kinds.ts';

export type BookCode = BookFindingCode;

export const bookFindingWords: Readonly<Record<BookCode, FindingWords>> = {
  'rival-amendments': {
    title: 'Two corrections of one record',
    sentence: 'A record has more than one correction ({records:number} in question); none is used until you choose.',
    cause: 'Two people corrected it without seeing each other’s correction. Both are kept.',
    remedy: 'Choose one; the other stays in the book.',
  },
  'amendments-in-a-ring': {
    title: 'Corrections that correct one another',
    sentence: '{records:number} records each say that they correct another of them; none of them is used.',
    cause: 'A correction has to name an older record. These came from a file that was changed by hand.',
    remedy: 'Record what happened once more, and strike these out.',
  },
  'original-not-received': {
    title: 'A correction of a record that is not here',
    sentence: 'A correction names a record that has not come in; the correction is used as it stands.',
    cause: 'The record may still be on the device it was made on.',
    remedy: 'Open Leywright on the device that made it, where there is signal.',
  },
  'one-id-two-entries': {
    title: 'One record with two contents',
    sentence: 'Two records bear the same mark and say different things; one of them is used.',
    cause: 'This happens when a file of the book was changed by hand or two copies of a device were at work.',
    remedy: 'Look at both, and correct the one that is wrong by a new record.',
  },
  'records-not-received': {
    title: 'Records not yet received',
    sentence: '{count:number} records from {device} have not come in yet (its numbers {from:number} to {to:number}).',
    cause: 'The device numbers its records and these numbers are missing; the records may still be on it.',
    remedy: 'Open Leywright on that device where there is signal.',
  },
  'device-number-twice': {
    title: 'A device that counts twice',
    sentence: '{device} gave its number {number:plain} to {records:number} records.',
    cause: 'Two copies of one device are at work, or it was set back to an older state.',
    remedy: 'Look at these records; begin anew on one of the devices.',
  },
  'device-clock-wrong': {
    title: 'A device’s clock is wrong',
    sentence:
      'The clock of {device} runs ahead: {entries:number} of its records say they were entered after they were received.',
    cause: 'Its records are put in order by the time they were received.',
    remedy: 'Set the clock of that device.',
  },
  'record-without-stand': {
    title: 'A record without its stand',
    sentence: 'The record of {on}[ on {plot}][, {what},] fits no stand[; {standingThere} stood there].',
    cause: 'The stand was taken away, is misspelt, or is not yet in the plan.',
    remedy: 'Say which stand it belongs to, or correct the record.',
  },
  'record-without-plot': {
    title: 'A record without its plot',
    sentence: 'A record of {what} names the plot "{plot:plain}", which is not on the list.',
    cause: 'The plot was taken away or is misspelt.',
    remedy: 'Correct the record, or put the plot on the list.',
  },
  'stand-end-assumed': {
    title: 'No end said for a stand',
    sentence: '{what} on {plot} was sown or planted without a day on which it leaves; {to} is assumed.',
    cause: 'The record did not say, and no plan of this stand does.',
    remedy: 'Say how long it is to stand, or record when it ends.',
  },
  'no-rotation-to-agree': {
    title: 'Nothing to agree',
    sentence: 'A rotation was agreed and there is none.',
    cause: 'The rotation was taken away before, or has not come in yet.',
    remedy: 'Write the rotation, then agree it.',
  },
  'harvest-perhaps-twice': {
    title: 'A harvest recorded twice, perhaps',
    sentence:
      '{what}[ on {plot}] was recorded by two devices on {on}[: {firstKg:mass}][ and {secondKg:mass}]. Both are counted.',
    cause: 'Two people who lifted together may each have recorded it; or there were two loads.',
    remedy: 'Strike one out; or, when there were two loads, correct one with that as the reason.',
  },
};
