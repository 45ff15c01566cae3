/** What could be done about shortages, stores, yields and hands, by the code of the mend. */
import type { SupplyMendCode } from '@leywright/planner';

export const promiseMendWords: Readonly<Record<SupplyMendCode, string>> = {
  'grow-more': 'Grow more {crop}: {kg} from {fromWeek:start} on[, from about {areaM2} of ground].',
  'name-crop-with-plenty': 'Name {other} for this place in the box: {kg} of it finds no taker then.',
  'name-another-crop': 'Name another crop beside {crop} for its place in the box.',
  'promise-fewer-items': 'Promise fewer items[ from {firstWeek} to {lastWeek}][ in {onlyWeek}].',
  'fill-more-places': 'Name more crops for the box[ from {firstWeek} to {lastWeek}][ in {onlyWeek}].',
  'plan-stand': 'Plan a stand of {crop}[: {areaM2} would do].',
  'more-ground': 'Give {crop} {shortM2} more ground.',
  'more-ground-on-plot': 'Give {crop} {areaM2} more on {plot}, where ground is free then.',
  'fewer-households': 'Promise to {households}.',
  'store-more': 'Store {kg} more of {crop}[, from {areaM2} of ground].',
  'end-place-earlier': 'End the weeks of {crop} in the box with {week}.',
  'smaller-portion': 'Make the portion of {crop} smaller: {portionShare} of it lasts to the end.',
  'give-store-room': 'Make room for {kg} more in {store}.',
  'store-less': 'Put {kg} less into {store}.',
  'name-store': 'Name a store for {crop}: in {kind} it keeps up to {lifeWeeks}.',
  'look-at-unit': 'Look at the unit of your yield for {crop}.',
  'keep-own-yield': 'Keep your own yield, if it is right.',
  'give-yield': 'Give your own yield for {crop}.',
  'base-on-crop': 'Say which crop of the reference {crop} is like.',
  'ground-for-course': 'Give the course {course} {areaM2} more ground[ in {year}].',
  'find-hours': 'Find {hoursH} more in the year; then the farm feeds {households}.',
  'find-hands': 'Find hands for it[: {hoursH} more].',
  'move-what-can-wait': 'Move what can wait to a quieter week.',
  'write-hours': 'Write down who works and how many hours a week.',
};
