/** Parts of the pack that prove: balances, two traces, corrections, what is to put right, who signed. */
import { proof } from '@leywright/planner';
import { linkSentence } from '../proof/proof-words.ts';
import { tellTrace } from '../proof/tell-proof.ts';
import { tellFindings } from '../tell.ts';
import { voiceOf } from '../words/voice.ts';
import { kilos, notRecorded, type PackView, type PartOf } from './part.ts';

const judgedWords = { fine: 'adds up', look: 'to look at', alarm: 'ALARM' } as const;

export const balancePart: PartOf = (view) => {
  const { chain, from, to } = view;
  const balances = proof.cropsBetween(chain, from, to).map((crop) => proof.balanceOf(chain, { crop, from, to }));
  const off = (one: (typeof balances)[number]) => Math.abs(one.notAccountedShare ?? 0);
  const sorted = balances.toSorted((one, other) => off(other) - off(one) || (one.crop < other.crop ? -1 : 1));
  const alarms = balances.filter((one) => one.judged === 'alarm').length;
  const looks = balances.filter((one) => one.judged === 'look').length;
  const number = (head: string) => ({ head, widthShare: 0.078, isNumber: true });
  return {
    title: 'Mass balances, worst first',
    sentence: `In kg. Opening + in = boxes + sold, given, own use + graded out + lost + not packed + closing + not accounted for. ${alarms} crops with more out than in, ${looks} outside the range of ${proof.usualBandShare * 100} %. The records of the lots are in part 7.`,
    columns: [
      { head: 'Crop', widthShare: 0.22 },
      ...['Opening', 'In', 'Boxes', 'Sold, own', 'Graded out', 'Lost', 'Not packed', 'Closing', 'Not acc.'].map(number),
      { head: 'Judged', widthShare: 0.078 },
    ],
    rows: sorted.map((one) => [
      view.cropName(one.crop),
      kilos(one.openingKg),
      kilos(one.termsKg.harvested + one.termsKg.bought),
      kilos(one.termsKg.boxes),
      kilos(one.termsKg.sale + one.termsKg['own-use'] + one.termsKg.gift + one.termsKg.seed),
      kilos(one.termsKg['graded-out']),
      kilos(one.termsKg.compost + one.termsKg.loss),
      kilos(one.notPackedKg),
      kilos(one.closingKg),
      kilos(one.notAccountedKg),
      judgedWords[one.judged],
    ]),
  };
};

/** The last run of the year and its heaviest lot, where nobody chose. */
function chosen(view: PackView): readonly string[] {
  if (view.traces !== undefined && view.traces.length > 0) return view.traces;
  const within = (one: { readonly on: string }) => one.on >= view.from && one.on <= view.to;
  const run = [...view.chain.runs.values()].filter(within).at(-1);
  const lots = [...view.chain.lots.values()].filter(within);
  const heaviest = lots.toSorted((one, other) => (other.grossKg ?? 0) - (one.grossKg ?? 0))[0];
  return [
    ...(run === undefined ? [] : [`run/${run.id}`]),
    ...(heaviest === undefined ? [] : [`lot/${heaviest.label}`]),
  ];
}

export const tracePart: PartOf = (view) => {
  const given = { farm: view.farm, cropName: view.cropName, knownOn: view.knownOn };
  const asked = chosen(view);
  const rows = asked.flatMap((what) => {
    const trace = tellTrace(view.chain, what, given);
    if (trace === null) return [[what, 'not known in this book', '', '', '']];
    return [
      ...trace.lots.flatMap(({ lot, kg, sowings, ground, inputs }) => [
        [what, `lot ${lot.label} ${lot.cropName}, ${lot.plotName ?? notRecorded}`, lot.on, kilos(kg), lot.entry],
        ...sowings.map((one) => [what, `sown, seed ${one.seedLot ?? notRecorded}`, one.on, '', one.entry]),
        ...inputs.map((one) => [
          what,
          `input ${one.name ?? one.batch}, animal-free: ${one.animalFree}`,
          one.on,
          '',
          one.entry,
        ]),
        ...ground.map((one) => [what, `on that ground: ${one.kind} ${view.cropName(one.what)}`, one.on, '', one.entry]),
      ]),
      ...trace.runs.map((run) => [
        what,
        `run ${run.id}, ${run.boxes} boxes`,
        run.on,
        kilos(run.kg),
        run.entries.join(' '),
      ]),
      ...trace.handings.map((one) => [what, `handed over at ${one.drop}, ${one.boxes} boxes`, one.on, '', one.entry]),
      ...trace.others.map((one) => [
        what,
        `${one.how === 'counted-off' ? 'a count found missing' : one.how}${one.recipient === null ? '' : ` to ${one.recipient}`}`,
        one.on,
        kilos(one.kg),
        one.entry,
      ]),
      ...trace.missing.map((one) => [what, `Missing: ${one.sentence}`, one.on, kilos(one.kg), one.entries.join(' ')]),
      ...trace.bins.map((one) => [what, `still in ${one.bin}`, '', kilos(one.kg), '']),
    ];
  });
  return {
    title: 'Traces',
    sentence: `${asked.length === 0 ? 'There is nothing to trace in this year.' : `${view.traces === undefined ? 'Chosen by the program, since nobody chose' : 'As chosen'}: ${asked.join(' and ')}.`}`,
    columns: [
      { head: 'Trace', widthShare: 0.13 },
      { head: 'What', widthShare: 0.4 },
      { head: 'Day', widthShare: 0.1 },
      { head: 'kg', widthShare: 0.09, isNumber: true },
      { head: 'Record', widthShare: 0.28 },
    ],
    rows,
  };
};

export const correctionPart: PartOf = (view) => {
  const corrections = view.known.filter(
    (entry) =>
      (entry.amends !== null || entry.body?.kind === 'withdrawn') && entry.enteredAt.slice(0, 4) >= String(view.year),
  );
  const late = view.known.filter(
    (entry) => entry.doneOn >= view.from && entry.doneOn <= view.to && entry.enteredAt.slice(0, 10) > entry.doneOn,
  );
  return {
    title: 'Corrections made in the book',
    sentence: `${corrections.length} corrections since the year began; what they correct is kept. ${late.length} records of the year were entered on a later day than they were done.`,
    columns: [
      { head: 'Entered', widthShare: 0.14 },
      { head: 'By', widthShare: 0.1 },
      { head: 'Why', widthShare: 0.2 },
      { head: 'Corrects', widthShare: 0.28 },
      { head: 'Record', widthShare: 0.28 },
    ],
    rows: corrections.map((entry) => [
      entry.enteredAt.slice(0, 16).replace('T', ' '),
      entry.by,
      entry.reason ?? (entry.body?.kind === 'withdrawn' ? 'withdrawn' : notRecorded),
      entry.amends ?? (entry.body?.kind === 'withdrawn' ? entry.body.entry : ''),
      entry.id,
    ]),
  };
};

export const findingPart: PartOf = (view) => {
  const { findings } = tellFindings(view.plan, voiceOf(view.plan, view.farm));
  const open = findings.filter((finding) => finding.gravity === 'put-right');
  const links = view.chain.faults.filter((fault) => fault.on >= view.from && fault.on <= view.to);
  return {
    title: 'To put right, and missing links',
    sentence: `${open.length} to put right in the plan as of ${view.plan.today}; ${links.length} missing links in the records of ${view.year}.`,
    columns: [
      { head: 'Where', widthShare: 0.12 },
      { head: 'What', widthShare: 0.6 },
      { head: 'Record', widthShare: 0.28 },
    ],
    rows: [
      ...open.map((finding) => ['plan', finding.sentence, '']),
      ...links.map((fault) => [fault.on, linkSentence(fault), fault.entries.join(' ')]),
    ],
  };
};

export const signedPart: PartOf = ({ known, knownOn }) => {
  const last = known.at(-1);
  const end =
    last === undefined
      ? 'The book is empty.'
      : `The book ends with entry ${last.seq}, sealed ${last.hash.slice(0, 16)}….`;
  return {
    title: 'Who signed',
    sentence: `As known on ${knownOn}. ${end} Whoever holds the whole book can check the seal.`,
    columns: [
      { head: 'For', widthShare: 0.25 },
      { head: 'Name', widthShare: 0.25 },
      { head: 'Day', widthShare: 0.15 },
      { head: 'Signature', widthShare: 0.35 },
    ],
    rows: ['The farm', 'The inspector', 'Witness'].map((one) => [one, '', '', '']),
  };
};
