/** What is asked of the server and what it answers, besides the plan. */
import { z } from 'zod';

/** One thing wrong with what was sent: a request's field, or a place in a farm folder. */
export const problem = z
  .object({
    code: z.string(),
    sentence: z.string(),
    file: z.string().nullable(),
    line: z.number().nullable(),
    column: z.string().nullable(),
    found: z.string().nullable(),
    nearest: z.array(z.string()),
    gravity: z.enum(['stops', 'look']),
  })
  .meta({
    id: 'Problem',
    description: 'What is wrong, where, what was found, and what would do. All problems come at once.',
  });

export const problems = z.object({ problems: z.array(problem) }).meta({ id: 'Problems' });

export const farmSummary = z
  .object({ id: z.string(), name: z.string(), sample: z.boolean(), createdAt: z.string(), lastSeq: z.number() })
  .meta({ id: 'FarmSummary', description: 'A farm of this store; `lastSeq` grows with every entry of its book.' });

export const farms = z.object({ farms: z.array(farmSummary) }).meta({ id: 'Farms' });

export const today = z
  .object({ today: z.string(), isDaySaid: z.boolean(), version: z.string() })
  .meta({ id: 'Today', description: 'The farm’s day as the server reckons it.' });

/** "We have 6 plots, 5.2 ha, near Cambridge; we promise 7 items to 260 households, 49 weeks." */
export const firstSentence = z
  .object({
    name: z.string().trim().min(1).max(200).nullish(),
    plots: z.number(),
    areaHa: z.number(),
    plotAreasHa: z.array(z.number()).max(60).nullish(),
    near: z.string().trim().max(200).nullish(),
    latDeg: z.number().nullish(),
    lonDeg: z.number().nullish(),
    items: z.number(),
    households: z.number(),
    weeks: z.number(),
  })
  .meta({
    id: 'FirstSentence',
    description: 'The sentence a farm begins with. Give a place known by name, or its latitude.',
  });

/** The files of a farm folder by name, as text. */
export const folderFiles = z
  .object({ files: z.record(z.string().min(1).max(200), z.string()) })
  .meta({ id: 'FolderFiles', description: 'A farm folder as a map from file name to its text.' });

/** A zipped farm folder, sent as `application/zip`. */
const zip = z
  .string()
  .meta({ id: 'FarmZip', format: 'binary', description: 'A zipped farm folder, sent as application/zip.' });

export const sampleFarm = z
  .object({ sample: z.literal(true) })
  .meta({ id: 'SampleFarm', description: 'Asks for the sample farm: the one that is here, or a new one.' });

export const folder = z.union([folderFiles, zip]).meta({ id: 'Folder' });
export const newFarm = z.union([firstSentence, folderFiles, sampleFarm, zip]).meta({ id: 'NewFarm' });

export const founded = z.object({ farm: farmSummary, assumed: z.array(z.string()), problems: z.array(problem) }).meta({
  id: 'Founded',
  description: 'The new farm, what was assumed for it, and what in its folder is worth a look.',
});

export const folderCheck = z
  .object({ wouldImport: z.boolean(), name: z.string().nullable(), problems: z.array(problem) })
  .meta({
    id: 'FolderCheck',
    description: 'Whether a folder could be imported, and everything found in it. Nothing is kept.',
  });

/** An entry of the book in full is read by the book itself; here only its envelope is described. */
export const entry = z
  .looseObject({
    v: z.literal(1),
    id: z.string(),
    farm: z.string(),
    doneOn: z.string(),
    doneAt: z.string().nullable(),
    enteredAt: z.string(),
    by: z.string(),
    device: z.string(),
    deviceSeq: z.number(),
    body: z.unknown(),
    amends: z.string().nullable(),
    reason: z.string().nullable(),
  })
  .meta({ id: 'Entry', description: 'One entry of the book, made once and never changed.' });

export const receivedEntry = entry
  .extend({ receivedAt: z.string(), seq: z.number(), salt: z.string(), bodyDigest: z.string(), hash: z.string() })
  .meta({ id: 'ReceivedEntry', description: 'An entry with its place in the chain.' });

export const entriesPage = z
  .object({ entries: z.array(receivedEntry), lastSeq: z.number(), readTo: z.number(), more: z.boolean() })
  .meta({
    id: 'EntriesPage',
    description:
      'Entries after a `seq`, in order, as far as one’s role sees them; ask again after `readTo` while `more`.',
  });

export const newEntries = z.object({ entries: z.array(z.unknown()).max(5000) }).meta({ id: 'NewEntries' });

export const appended = z
  .object({
    received: z.array(z.object({ id: z.string(), seq: z.number(), hash: z.string() })),
    already: z.array(z.string()),
    lastSeq: z.number(),
  })
  .meta({ id: 'Appended', description: 'What was new and what was here already. Sending the same again is no fault.' });

const calcPlace = z.object({ key: z.string(), unit: z.string(), meaning: z.string() });

export const calcModel = z
  .object({
    model: z.string(),
    title: z.string(),
    inputs: z.array(calcPlace.extend({ optional: z.boolean(), kind: z.string() })),
    outputs: z.array(calcPlace),
    source: z.string(),
  })
  .meta({ id: 'CalcModel', description: 'A science model by name: what goes in, what comes out, from where.' });

export const calcModels = z.object({ models: z.array(calcModel) }).meta({ id: 'CalcModels' });
export const calcInputs = z.record(z.string(), z.unknown()).meta({ id: 'CalcInputs' });
export const calcAnswer = z
  .object({ model: z.string(), outputs: z.record(z.string(), z.unknown()), units: z.record(z.string(), z.string()) })
  .meta({ id: 'CalcAnswer' });

/** `leywright calc --checks`: published values held against the models. */
export const checkedRows = z
  .object({
    rows: z.array(
      z.object({
        id: z.string(),
        status: z.enum(['met', 'missed', 'unknown']),
        got: z.unknown(),
        expected: z.unknown(),
        off: z.unknown(),
        why: z.string(),
      }),
    ),
  })
  .meta({ id: 'CheckedRows', title: 'Checked rows' });

/** What a command prints on `--json` when a farm folder cannot be read. */
export const folderProblems = z
  .object({
    problems: z.array(
      problem
        .extend({ figures: z.record(z.string(), z.union([z.string(), z.number()])) })
        .meta({ id: 'FolderProblem', description: 'A problem of a farm folder, with its figures.' }),
    ),
  })
  .meta({ id: 'FolderProblems', title: 'Folder problems' });
