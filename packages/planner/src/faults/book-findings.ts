/** What a replay had to say about the book, as findings beside all others. Rival corrections and circles leave a record unused: to put right. */
import type { BookFinding, BookFindingCode } from '@leywright/book';
import type { Finding, FindingCode, Gravity, Place } from '../plan/finding.ts';

export const bookMendCodes = [
  'choose-amendment',
  'open-device',
  'set-clock',
  'name-stand',
  'correct-record',
  'record-end',
  'ask-for-record',
  'write-rotation',
] as const;
export type BookMendCode = (typeof bookMendCodes)[number];

interface Way {
  readonly gravity: Gravity;
  readonly mends: readonly BookMendCode[];
}

const ways: Readonly<Record<BookFindingCode & FindingCode, Way>> = {
  'rival-amendments': { gravity: 'put-right', mends: ['choose-amendment'] },
  'amendments-in-a-ring': { gravity: 'put-right', mends: ['correct-record'] },
  'original-not-received': { gravity: 'look', mends: ['ask-for-record'] },
  'records-not-received': { gravity: 'look', mends: ['open-device'] },
  'device-number-twice': { gravity: 'look', mends: ['correct-record'] },
  'device-clock-wrong': { gravity: 'look', mends: ['set-clock'] },
  'one-id-two-entries': { gravity: 'look', mends: ['correct-record'] },
  'record-without-stand': { gravity: 'look', mends: ['name-stand', 'correct-record'] },
  'record-without-plot': { gravity: 'look', mends: ['correct-record'] },
  'stand-end-assumed': { gravity: 'note', mends: ['record-end'] },
  'no-rotation-to-agree': { gravity: 'look', mends: ['write-rotation'] },
  'harvest-perhaps-twice': { gravity: 'look', mends: ['correct-record'] },
};

export function bookFindings(found: readonly BookFinding[]): readonly Finding[] {
  return found.map(({ code, entries, plot, stand, figures }) => {
    const { gravity, mends } = ways[code];
    const [entry] = entries;
    const place: Place = {
      ...(plot === null ? {} : { plot }),
      ...(stand === null ? {} : { stand }),
      ...(entry === undefined ? {} : { entry }),
    };
    return {
      code,
      gravity,
      place,
      figures: { ...figures, records: entries.length },
      mend: mends.map((mend) => ({ code: mend, figures: {} })),
      reason: null,
      why: null,
    };
  });
}
