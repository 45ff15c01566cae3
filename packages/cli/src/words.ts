/** The command's own words. Sentences about farms come from the api package. */
export const usage = `leywright: plans, runs and proves the year of a stock-free organic vegetable farm.

  leywright plan FARM [--year Y] [--json]       the whole chain: ground, boxes, stores, work, findings
  leywright check FARM [--json]                 findings only
  leywright why FARM FIGURE [--json]            where one figure comes from
  leywright rotation FARM [--years N] [--pin PLOT:YEAR:COURSE] [--json]   propose the rotation, or say what conflicts
  leywright calc MODEL < inputs.json            one science model by name
  leywright calc --list                         the models, their inputs and outputs
  leywright calc --checks FILE.csv [--json]     published values held against the models
  leywright import FARM --data DIR              a farm folder into a store
  leywright export FARM --to PATH               a farm as a folder, or as a zip when PATH ends in .zip
  leywright verify-book FARM [--json]           whether the book is as it was written
  leywright serve [--data DIR] [--port N]       the app, on this machine

FARM is a farm folder or a zip of one; with --data DIR it is the id of a farm in that store.
--today YYYY-MM-DD   the farm's day (else the clock's)
--stop-at GRAVITY    exit 1 on findings at or above it: put-right, look or note (check stops at put-right by itself)
Exit code: 0 fine, 1 findings at or above --stop-at, 2 bad input. Shapes of --json: docs/schema.`;

export const later: Readonly<Record<string, string>> = {
  promise:
    'leywright promise is not in this version yet: it comes with the supply planner. leywright plan shows what the promise needs.',
  backup:
    'leywright backup is not in this version yet: it comes with the Book. leywright export keeps a farm with its whole book.',
  restore:
    'leywright restore is not in this version yet: it comes with the Book. leywright import brings an exported farm back.',
};

export const said = {
  noCommand: (found: string, nearest: string | null) =>
    `There is no command "${found}".${nearest === null ? '' : ` Did you mean ${nearest}?`} leywright --help lists them.`,
  noFarm: 'Say which farm: a farm folder, a zip of one, or with --data the id of a farm in the store.',
  notThere: (path: string) => `There is no folder or zip "${path}".`,
  neither: (path: string) => `"${path}" is neither a folder nor a zip.`,
  tooLarge: (path: string) => `"${path}" is too large for a farm folder.`,
  notImported: 'Nothing was read: put right what stands above, then run the same command again.',
  notAYear: (found: string) => `--year: "${found}" is not a year.`,
  farYear: (found: string, today: string) => `--year: ${found} is further from ${today} than a plan can reach.`,
  notADay: (found: string) => `--today: "${found}" is not a day of the calendar. Write it 2027-06-08.`,
  notAGravity: (found: string) => `--stop-at: "${found}" is not put-right, look or note.`,
  noFigure:
    'Say which figure, such as net/a, seed/carrot-maincrop/2027 or store/carrot-maincrop/2027-w02. The plan names them.',
  noSuchFigure: (found: string) => `There is no figure "${found}" in this plan.`,
  noModel: 'Say which model; leywright calc --list names them.',
  noSuchModel: (found: string, nearest: string | null) =>
    `There is no model "${found}".${nearest === null ? '' : ` Did you mean ${nearest}?`} leywright calc --list names them.`,
  inputNotJson: 'The inputs on standard input are not a JSON object, such as { "lat": 52.3, "J": 172 }.',
  noChecks: (path: string) => `There is no table "${path}" that can be read.`,
  badChecks: (path: string, why: string) => `${path} cannot be read as a table of checks: ${why}`,
  checksWant: 'it needs the columns id, inputs, expected and tolerance',
  needsData: 'Say which store with --data DIR.',
  needsTo: 'Say where to with --to PATH (a new folder, or a name that ends in .zip).',
  toTaken: (path: string) => `"${path}" is there already and was left as it is. Name a new folder or file.`,
  cannotWrite: (path: string, why: string) => `"${path}" cannot be written: ${why}`,
  noStoreFarm: (found: string, ids: readonly string[]) =>
    `There is no farm "${found}" in this store.${ids.length === 0 ? ' It has none yet.' : ` It has: ${ids.join(', ')}.`}`,
  tooMany: (found: string) => `"${found}" is one word too many.`,
} as const;
