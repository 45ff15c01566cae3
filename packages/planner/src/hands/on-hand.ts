/** Hands and hours: who does what, weeks levelled, what slips, what one more pair of hands frees. */
export { assignHands, hoursAddedUp, hoursBy } from './assign.ts';
export { daysOfPerson, handsAreKnown, handsInWeek, hoursOfPersonH } from './hands.ts';
export { levelWork } from './level.ts';
export { oneMoreInWeek } from './one-more.ts';
export { slipOf } from './slip.ts';
