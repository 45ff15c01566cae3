/** The worker: holds the farm's book, works the plan out, and tells the page what there is to see. */
import * as z from 'zod';
import { ownClock } from './book/clock.ts';
import { openKeep } from './book/keep.ts';
import { ownServer } from './book/server.ts';
import { waitAtServer, watch } from './book/watch.ts';
import { Door } from './door/door.ts';
import { FarmDesk } from './farm-desk.ts';
import type { FromWorker, ToWorker, WorkerCalls } from './messages.ts';
import { RecordDesk } from './record/record-desk.ts';

// The pages run under a policy without eval, and zod would try it.
z.config({ jitless: true });

const betweenLooksMs = 20_000;

const tell = (message: FromWorker) => self.postMessage(message);

async function begin(): Promise<{ readonly calls: WorkerCalls; readonly desk: FarmDesk }> {
  const server = ownServer();
  const tools = { server, keep: await openKeep(), clock: ownClock() };
  const desk = new FarmDesk(tools, (seen) => tell({ kind: 'seen', seen }));
  const door = new Door(server, desk);
  void desk.start();
  setInterval(() => void desk.lookAgain(), betweenLooksMs);
  void watch({
    standing: () => desk.standing(),
    waitFor: waitAtServer,
    lookAgain: () => desk.lookAgain(),
    sleep: (ms) => new Promise((done) => setTimeout(done, ms)),
  });
  const records = new RecordDesk(desk, timeOfDay);
  return { calls: callsOf({ desk, door, records }), desk };
}

/** "10:42" by this machine. */
function timeOfDay(): string {
  const now = new Date();
  return [now.getHours(), now.getMinutes()].map((part) => String(part).padStart(2, '0')).join(':');
}

interface Desks {
  readonly desk: FarmDesk;
  readonly door: Door;
  readonly records: RecordDesk;
}

function callsOf({ desk, door, records }: Desks): WorkerCalls {
  return {
    focusYear: (isoYear) => desk.focusYear(isoYear),
    why: async (figureId) => desk.why(figureId),
    setShows: (shows) =>
      void desk.enter(({ about }) => ({ kind: 'set', subject: 'about', key: '', value: { ...about, shows } })),
    record: (wish) => records.record(wish),
    undo: (entries) => records.undo(entries),
    correct: (entries, correction) => records.correct(entries, correction),
    farms: () => desk.farms(),
    knownPlaces: async () => door.knownPlaces(),
    openFarm: (id) => door.openFarm(id),
    begin: (beginning) => door.begin(beginning),
    openSample: () => door.openSample(),
    readFolder: (files) => door.readFolder(files),
    mendFolder: (mends) => door.mendFolder(mends),
    takeFolder: () => door.takeFolder(),
  };
}

const begun = begin();

self.onmessage = async ({ data }: MessageEvent<ToWorker>) => {
  const { calls, desk } = await begun;
  if (data.kind === 'look-again') {
    await desk.lookAgain();
    return;
  }
  const { id, call, words } = data;
  try {
    tell({ kind: 'answer', id, value: await (calls[call] as (...said: unknown[]) => unknown)(...words) });
  } catch (fault) {
    console.error(fault);
    tell({ kind: 'fault', id, sentence: String(fault) });
  }
};
