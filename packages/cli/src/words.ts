/** The command's own words. Sentences about farms come from the api package. */
export const usage = `leywright: plans, runs and proves the year of a stock-free organic vegetable farm.

  leywright plan FARM [--year Y] [--json]       the whole chain: ground, boxes, stores, work, findings
  leywright check FARM [--json]                 findings only
  leywright promise FARM [--json]               how likely each week of the promise is kept
  leywright why FARM FIGURE [--json]            where one figure comes from
  leywright work FARM [--year Y] [--json]       hours against hands by week, what may move, who does what
  leywright day FARM [--person ID] [--to F.ics] [--json]   this week's jobs in the order of the walk; a calendar file
  leywright order FARM [--year Y] [--to F.csv|F.xlsx] [--json]   seed to order, plants to raise
  leywright rotation FARM [--years N] [--pin PLOT:YEAR:COURSE] [--json]   propose the rotation, or say what conflicts
  leywright covers FARM [--year Y] [--json]     which cover for every gap, ranked with reasons
  leywright calc MODEL < inputs.json            one science model by name
  leywright calc --list                         the models, their inputs and outputs
  leywright calc --checks FILE.csv [--json]     published values held against the models
  leywright import FARM --data DIR              a farm folder into a store
  leywright export FARM --to PATH               a farm as a folder, or as a zip when PATH ends in .zip
  leywright trace FARM WHAT [--json]            a run or drop back to seed and ground; a lot, seed, batch, bin or plot forward
  leywright balance FARM [--crop C] [--json]    opening, harvested, boxes … closing, and what is not accounted for
  leywright week FARM [YEAR-wWW] [--json]       what each size of box gets, what to pick and where, what a box weighs
  leywright pack FARM [--year Y] --to FILE.pdf  the inspection pack (a folder of CSV when it does not end in .pdf)
  leywright verify-book FARM [--json]           whether the book is as it was written
  leywright verify-book FILE [--json]           every book in a store or a backup
  leywright backup --data DIR --to PATH         the whole store into one file, while it is in use
  leywright restore FILE --data DIR             a backup put back; --replace puts the store that is there aside
  leywright serve [--data DIR] [--port N]       the app, on this machine
  leywright people DEED FARM [PERSON]           who may sign in: list, invite, end, give-back, sign-out, factor-off
  leywright households DEED FARM [CODE]         personal facts of households: list, export, erase, erase-over

FARM is a farm folder or a zip of one; with --data DIR it is the id of a farm in that store.
--today YYYY-MM-DD   the farm's day (else the clock's)
--stop-at GRAVITY    exit 1 on findings at or above it: put-right, look or note (check stops at put-right by itself)
Exit code: 0 fine, 1 findings at or above --stop-at, 2 bad input. Shapes of --json: docs/schema.`;

export const said = {
  noCommand: (found: string, nearest: string | null) =>
    `There is no command "${found}".${nearest === null ? '' : ` Did you mean ${nearest}?`} leywright --help lists them.`,
  noPromise: 'This farm promises nothing week by week: without slots in promise.csv there is nothing to keep.',
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
  noPerson: (found: string, nearest: string | null) =>
    `Nobody called "${found}" is written down in people.csv.${nearest === null ? '' : ` Did you mean ${nearest}?`}`,
  sheetEnding: (path: string) => `"${path}": an order sheet ends in .csv or .xlsx.`,
  noSuchFigure: (found: string) => `There is no figure "${found}" in this plan.`,
  noModel: 'Say which model; leywright calc --list names them.',
  noSuchModel: (found: string, nearest: string | null) =>
    `There is no model "${found}".${nearest === null ? '' : ` Did you mean ${nearest}?`} leywright calc --list names them.`,
  calcKinds:
    'A ? may be left out. A number may be a list; lists of equal length go element by element. A series is a list in time, \nand one number stands for all of it.',
  inputNotJson: 'The inputs on standard input are not a JSON object, such as { "lat": 52.3, "J": 172 }.',
  noChecks: (path: string) => `There is no table "${path}" that can be read.`,
  badChecks: (path: string, why: string) => `${path} cannot be read as a table of checks: ${why}`,
  checksWant: 'it needs the columns id, inputs, expected and tolerance',
  needsData: 'Say which store with --data DIR.',
  needsTo: 'Say where to with --to PATH (a new folder, or a name that ends in .zip).',
  needsBackup: 'Say which backup: the file that leywright backup made.',
  noStore: (path: string) => `There is no store in "${path}".`,
  storeThere: (path: string) =>
    `There is a store already: ${path}. It was left as it is. With --replace it is put aside under another name first.`,
  toTaken: (path: string) => `"${path}" is there already and was left as it is. Name a new folder or file.`,
  cannotWrite: (path: string, why: string) => `"${path}" cannot be written: ${why}`,
  noStoreFarm: (found: string, ids: readonly string[]) =>
    `There is no farm "${found}" in this store.${ids.length === 0 ? ' It has none yet.' : ` It has: ${ids.join(', ')}.`}`,
  noDeed: (command: string, found: string | undefined, nearest: string | null, deeds: readonly string[]) =>
    `${found === undefined ? `Say what to do: leywright ${command} DEED FARM.` : `leywright ${command} knows no "${found}".`}${nearest === null ? '' : ` Did you mean ${nearest}?`} It knows ${deeds.join(', ')}.`,
  whichFarm: (ids: readonly string[]) =>
    `Say which farm.${ids.length === 0 ? ' This store has none yet.' : ` This store has: ${ids.join(', ')}.`}`,
  whichPerson: 'Say which person, by the name they sign in with, such as ruth.',
  whichHousehold: 'Say which household, by its code.',
  notARole: (found: string | undefined, roles: readonly string[]) =>
    `--role: ${found === undefined ? 'say which role' : `"${found}" is none`}: ${roles.join(', ')}.`,
  notAKnownDay: (found: string) => `--as-known-on: "${found}" is not a day of the calendar. Write it 2027-06-08.`,
  notDays: (found: string) => `--days: "${found}" is not a number of days, 1 to 30.`,
  nobodyYet: 'Nobody can sign in yet. leywright people invite FARM PERSON --role grower makes a link for the first.',
  invited: ({ name, until, link }: { readonly name: string; readonly until: string; readonly link: string }) =>
    `Hand this link to ${name}. It opens once, until ${until}, and is not shown again:\n${link}`,
  didToAccount: {
    end: (person: string) => `"${person}" may not sign in any more, and was signed out everywhere.`,
    'give-back': (person: string) => `"${person}" may sign in again.`,
    'sign-out': (person: string) => `"${person}" was signed out everywhere.`,
    'factor-off': (person: string) =>
      `The second factor of "${person}" is off and every session ended. A grower sets up a new one at the next sign-in.`,
  },
  noHouseholds: 'No households are kept here.',
  householdWritten: (code: string, path: string) => `All that is kept about household "${code}" is in ${path}.`,
  householdErased: (code: string) =>
    `The personal facts of household "${code}" are erased. Backups made before still hold them: let those run out.`,
  householdsErased: (count: number, months: number) =>
    `${count} ${count === 1 ? 'household' : 'households'} whose last box was more than ${months} months ago: personal facts erased.`,
  packNeedsTo: 'Say where to with --to: a new file that ends in .pdf, or a new folder for CSV files.',
  noWeek: (found: string) => `${found} is not a week of this plan. Write it 2027-w02.`,
  noTrace:
    'Say what to trace: run/ID, drop/ID, lot/2026-018, seed/LOT, batch/NAME, bin/NAME (or bin/STORE/CROP), plot/ID.',
  noSuchTrace: (found: string) => `Nothing in the book is known as "${found}".`,
  noLots: 'The book has no harvest and no bought produce in that time.',
  tooMany: (found: string) => `"${found}" is one word too many.`,
} as const;
