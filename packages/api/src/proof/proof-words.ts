/** Sentences about lots and balances, in English. */
import type { LinkFault, LinkFaultCode } from '@leywright/planner';

const kilos = (kg: number | null) => (kg === null ? 'kilos nobody weighed' : `${Math.round(kg * 10) / 10} kg`);

const sentences: Readonly<Record<LinkFaultCode, (fault: LinkFault) => string>> = {
  'harvest-without-plot': ({ named, kg }) =>
    `Lot ${named} (${kilos(kg)}): the record does not say which plot it came from.`,
  'harvest-without-stand': ({ named }) =>
    `Lot ${named}: the record does not say which stand was lifted, so it leads no further back than the plot.`,
  'harvest-not-weighed': ({ named }) => `Lot ${named} was neither weighed nor counted.`,
  'sowing-not-recorded': ({ named }) => `Lot ${named}: no sowing or planting of its stand is in the book.`,
  'seed-lot-not-recorded': ({ named }) => `Lot ${named}: the sowing does not say which seed lot was used.`,
  'source-not-known': ({ named, kg }) =>
    `${kilos(kg)} more were taken from ${named} than the book knows to have been there.`,
  'batch-not-known': ({ named }) => `${named} was used, and no record says that it came on the farm.`,
  'run-not-recorded': ({ named }) => `Boxes of run ${named} were handed over, and no packing of that run is recorded.`,
  'run-not-handed-over': ({ named }) => `No record says where the boxes of run ${named} went.`,
  'more-handed-over-than-packed': ({ named }) => `More boxes of run ${named} were handed over than packed.`,
  'statuses-mixed': ({ named, kg }) =>
    `${named}: produce of different status was put together (${kilos(kg)}). None of it may be sold as the higher one.`,
  'held-and-packed': ({ named, kg }) => `${named} is on hold, and ${kilos(kg)} of it were packed.`,
  'harvest-twice': ({ named }) =>
    `Lot ${named} may have been recorded twice: same day, plot and crop, nearly the same kilos. Strike one out if so.`,
  'not-organic-packed': ({ named, kg }) => `${kilos(kg)} that may not be sold as organic were packed (from ${named}).`,
};

export function linkSentence(fault: LinkFault): string {
  return sentences[fault.code](fault);
}

interface BalanceWords {
  readonly cropName: string;
  readonly judged: 'fine' | 'look' | 'alarm';
  readonly notAccountedKg: number;
  readonly bandShare: number;
  readonly notPackedKg: number;
}

export function balanceSentence({ cropName, judged, notAccountedKg, bandShare, notPackedKg }: BalanceWords): string {
  const band = `${Math.round(bandShare * 1000) / 10} %`;
  const open =
    notPackedKg > 0.05 ? ` ${kilos(notPackedKg)} were cut for boxes and no packing says where they went.` : '';
  if (judged === 'alarm')
    return `${cropName}: ${kilos(-notAccountedKg)} more went out than the book says came in. Look for a lot nobody recorded, or bought produce.${open}`;
  if (judged === 'look')
    return `${cropName}: ${kilos(notAccountedKg)} are not accounted for, more than the ${band} this farm allows. Look for waste nobody wrote down.${open}`;
  return `${cropName} adds up within ${band}: ${kilos(notAccountedKg)} not accounted for.${open}`;
}
