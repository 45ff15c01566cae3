/** The labels of Work. */
export const workWords = {
  picture: (year: number): string => `Days of work week by week in ${year}, under the days there are`,
  days: 'Days of work',
  brick: 'a brick is one person for a day',
  who: 'Who is here',
  notes: 'About the work',
  missing: 'missing: nobody to do it',
  groups: {
    pack: 'Pack, store, rounds',
    pick: 'Pick, lift',
    sow: 'Raise, sow, plant',
    weed: 'Hoe, weed',
    upkeep: 'Nets, covers, hedges, upkeep',
  },
  howTo:
    'The line is the days you have. Bricks under it are the jobs, packing at the foot since it cannot wait. A day is 8 hours. Below: who is here, dashed where away.',
  levelled: 'Moved inside their days',
  levelledBody: (levelled: { overBeforeH: number; overAfterH: number; moves: number }): string =>
    `${levelled.moves} ${levelled.moves === 1 ? 'job' : 'jobs'} moved to weeks with room would take ${Math.round(levelled.overBeforeH)} hours over the hands down to ${Math.round(levelled.overAfterH)}.`,
  jobsOf: (week: string): string => `Jobs of ${week}`,
  between: 'may be done from',
  waits: 'If it waits a week',
  ifItWaits: (title: string, plot: string): string => `If it waits a week: ${title}, ${plot}`,
  more: (count: number): string => `and ${count} smaller jobs`,
  tooLate: 'A week later its own days are over.',
  inTime: 'A week later is still in its days.',
  nothingSlips: 'Nothing else slips.',
  becomes: 'becomes',
  late: 'too late',
} as const;
