/** A source over the farm that does not exist, for looking at the pages and for tests of the look. Its sentences are invented too. */
import { asDay } from '@leywright/measures';
import type { Finding, Plan, Why } from '@leywright/planner';
import type { FarmView, PlanSource, Seen, ToldFinding } from '../../src/worker/plan-source.ts';
import { horizon, inventedGround, today } from './invented-ground.ts';
import { inventedNitrogen, inventedSupply, inventedWork } from './invented-supply.ts';

export function inventedView(year = 2027): FarmView {
  const ground = inventedGround();
  const findings = toldFindings(year);
  const plan: Plan = {
    farm: { id: 'oddlethorpe', name: 'Oddlethorpe Growers', sample: true },
    today,
    year,
    horizon,
    agreed: { state: 'agreed', on: asDay('2027-01-09') },
    climate: {
      station: 'none',
      period: '',
      distanceKm: 0,
      elevationDifferenceM: null,
      recordedDays: 0,
      recordedFrom: null,
      recordedTo: null,
    },
    ground,
    fertility: [],
    nitrogen: inventedNitrogen(ground),
    supply: inventedSupply(ground, year),
    work: inventedWork(ground, year),
    findings: findings.map(({ finding }) => finding),
    headline: { bareWinters: [], shortWeeks: [], shortItems: 6, boxWeeks: 49, households: 260, toPutRight: 3 },
  };
  return {
    plan,
    shows: { area: 'ha', mass: 'kg', weekStart: 'monday', money: 'GBP' },
    near: 'Nowhere',
    records: [],
    seenBefore: [],
    plants: [],
    hands: [],
    levelled: null,
    sizes: [
      { id: 'small', name: 'Small', households: 118 },
      { id: 'medium', name: 'Medium', households: 104 },
      { id: 'large', name: 'Large', households: 38 },
    ],
    told: {
      standing: 'Agreed, 9 January',
      findings,
      headline: {
        ground: [
          { text: 'One winter lies bare,', strong: true },
          { text: ' on Far Ridding. The box is short for ' },
          { text: 'five weeks', strong: true },
          { text: ' from June.' },
        ],
        boxes: [{ text: '49 boxes, 260 households.', strong: true }, { text: ' Five weeks fall short of 7 items.' }],
        day: [{ text: 'Monday 7 June, week 23.', strong: true }, { text: ' Six jobs on four plots.' }],
        work: [{ text: '3 days of work have nobody to do them:', strong: true }, { text: ' week 14.' }],
      },
    },
  };
}

function toldFindings(year: number): readonly ToldFinding[] {
  const finding = (code: Finding['code'], place: Finding['place']): Finding => ({
    code,
    place,
    gravity: 'put-right',
    figures: {},
    mend: [],
    reason: null,
    why: null,
  });
  const short = [23, 24, 25, 26, 27].map(
    (number): ToldFinding => ({
      finding: { ...finding('box-short', { week: `${year}-w${number}` }), gravity: 'look' },
      lead: 'Short',
      body: [],
      mends: [
        [
          { text: 'Bunched beetroot', strong: true },
          { text: ' in the tunnel, 40 m². Ready weeks 24 to 28, from 14 June.' },
        ],
        [
          { text: 'Hold 0.5 t of onions', strong: true },
          { text: ' at 1 °C to week 27. ' },
          { text: '6 in 100 sprout', figureId: 'store/onions/27' },
          { text: '.' },
        ],
        [{ text: 'Promise 6', strong: true }, { text: ' for weeks 23 to 27, 7 June to 11 July, and say so.' }],
      ],
    }),
  );
  return [
    {
      finding: finding('bare-in-leaching-season', { plot: 'far-ridding', from: '2028-11-02', to: '2029-04-20' }),
      lead: 'F bare for 22 weeks',
      body: [
        { text: 'From 2 November 2028. Roots lifted, nothing sown. ' },
        { text: '55 kg/ha', figureId: 'nitrogen/far-ridding/2028' },
        { text: ' of nitrogen at risk.' },
      ],
      mends: [[{ text: 'Undersow rye and vetch by week 38.' }]],
    },
    {
      finding: finding('box-short', { year }),
      lead: 'Short by 6 items',
      body: [{ text: 'Weeks ' }, { text: '23 to 27', figureId: `box/${year}-w25` }, { text: ', 7 June to 11 July.' }],
      mends: [],
    },
    {
      finding: finding('family-back-too-soon', { plot: 'cinder-hill', stand: 'cinder-hill.2029.onions' }),
      lead: 'Onions back too soon',
      body: [
        { text: 'On Cinder Hill in 2029, ' },
        { text: 'three years', figureId: 'rest/c/o' },
        { text: ' after leeks. You asked for four.' },
      ],
      mends: [],
    },
    ...short,
  ];
}

const why: Why = {
  id: 'nitrogen/far-ridding/2028',
  title: 'left',
  figures: {},
  value: 58,
  low: 49,
  high: 67,
  unit: 'kg/ha',
  formula: 'left in the soil × share washed below the roots',
  sum: '71 × 0.82 = 58 kg/ha',
  inputs: [
    {
      name: 'left in the soil',
      value: 71,
      unit: 'kg/ha',
      from: 'derived',
      where: null,
      source: null,
      howKnown: null,
      why: 'nitrogen/far-ridding/2027',
    },
    {
      name: 'share washed below the roots',
      value: 0.82,
      unit: '',
      from: 'reference',
      where: 'invented, row 4',
      source: 'invented',
      howKnown: 'memory',
      why: null,
    },
  ],
  doubt: ['Sure to within ±9 kg/ha.'],
  levers: [
    { change: 'Rye and vetch sown by week', value: 38, unit: '', result: 15 },
    { change: 'Rye alone, week', value: 44, unit: '', result: 47 },
  ],
};

export function inventedSource(): PlanSource {
  const listeners = new Set<() => void>();
  let seen: Seen = { kind: 'ready', view: inventedView(), offline: null };
  const show = (next: Seen) => {
    seen = next;
    for (const listener of listeners) listener();
  };
  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    seen: () => seen,
    focusYear: (isoYear) => {
      if (seen.kind === 'ready' && seen.view.plan.year !== isoYear)
        setTimeout(() => show({ kind: 'ready', view: inventedView(isoYear), offline: null }), 60);
    },
    setShows: (shows) => {
      if (seen.kind === 'ready') show({ kind: 'ready', view: { ...seen.view, shows }, offline: null });
    },
    why: async (figureId) => ({
      why: { ...why, id: figureId },
      title: '58 kg/ha',
      about: [{ text: 'Nitrogen at risk on Far Ridding, winter 2028 to 2029.' }],
    }),
    record: async () => [],
    undo: async () => undefined,
    correct: async () => undefined,
    begin: async () => [{ id: 'plots', where: 'Plots', sentence: 'Left blank. How many plots turn in the rotation?' }],
    farms: async () => [{ id: 'oddlethorpe', name: 'Oddlethorpe Growers', sample: true, isOpen: true }],
    knownPlaces: async () => ['Nowhere'],
    openFarm: async () => [],
    openSample: async () => [],
    readFolder: async () => ({ kind: 'not-read', problems: [] }),
    mendFolder: async () => ({ kind: 'not-read', problems: [] }),
    takeFolder: async () => [],
  };
}
