/** Options of the commands that prove: those of all farm commands, and which crop, when, and as known when. */
import { asKnownOn, type GoodsStatus, type ReceivedEntry, records } from '@leywright/book';
import { type Day, readDay } from '@leywright/measures';
import { type FarmWish, parseFarmWish } from '../arguments.ts';
import type { Opened } from '../farm/open-farm.ts';
import type { Io } from '../io.ts';

export interface ProofWish extends FarmWish {
  readonly crop: string | null;
  readonly fromDay: Day | null;
  readonly toDay: Day | null;
  readonly status: GoodsStatus | null;
  readonly knownOn: Day | null;
}

export type ProofParsed =
  | { readonly kind: 'wish'; readonly wish: ProofWish }
  | { readonly kind: 'problems'; readonly sentences: readonly string[] };

const ownOptions = ['--crop', '--from', '--until', '--status', '--known-on'] as const;

/** Takes its own options out and hands the rest to the common reader; all that is wrong is said together. */
export function parseProofWish(args: readonly string[], most: number, io: Io): ProofParsed {
  const { own, rest, sentences } = split(args);
  const day = (name: string): Day | null => {
    const text = own.get(name);
    const read = text === undefined ? null : readDay(text);
    if (text !== undefined && read === null)
      sentences.push(`${name}: "${text}" is not a day of the calendar. Write it 2027-06-08.`);
    return read;
  };
  const [fromDay, toDay, knownOn] = [day('--from'), day('--until'), day('--known-on')];
  const statusText = own.get('--status');
  const status = records.goodsStatuses.find((one) => one === statusText) ?? null;
  if (statusText !== undefined && status === null)
    sentences.push(`--status: "${statusText}" is not ${records.goodsStatuses.join(', ')}.`);
  const parsed = parseFarmWish(rest, most, io);
  if (parsed.kind === 'problems') return { kind: 'problems', sentences: [...parsed.sentences, ...sentences] };
  if (sentences.length > 0) return { kind: 'problems', sentences };
  return { kind: 'wish', wish: { ...parsed.wish, crop: own.get('--crop') ?? null, fromDay, toDay, status, knownOn } };
}

function split(args: readonly string[]) {
  const own = new Map<string, string>();
  const rest: string[] = [];
  const sentences: string[] = [];
  for (let at = 0; at < args.length; at++) {
    const word = args[at] ?? '';
    const [name = '', given] = word.split('=', 2);
    if (!(ownOptions as readonly string[]).includes(name)) rest.push(word);
    else {
      const value = given ?? args[at + 1];
      if (given === undefined) at += 1;
      if (value === undefined) sentences.push(`${name} wants a word after it.`);
      own.set(name, value ?? '');
    }
  }
  return { own, rest, sentences };
}

/** The entries the book had by the day asked for, in the farm's own zone. */
export function entriesKnown(opened: Opened, knownOn: Day | null): readonly ReceivedEntry[] {
  return knownOn === null ? opened.entries : asKnownOn(opened.entries, knownOn, opened.farm.about.place.timeZone);
}
