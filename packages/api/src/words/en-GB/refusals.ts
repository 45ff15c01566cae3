/** What is said when a request or a command cannot be met. */
export const refusalWords: Readonly<Record<string, string>> = {
  'newer-database':
    'The store was written by a newer Leywright (step {found:plain}; this one knows {known:plain}). Update this one; nothing was changed.',
  'damaged-database': 'The store is damaged and was left as it is. Put the latest backup in its place.',
  'not-a-database': 'The file given as the store is not a database. Name another folder with --data.',
  'no-such-store': 'There is no store for addresses that begin with "{found}:". Give a folder.',
  'forgetful-database':
    'The database answers before its disk has what was written ({found} is off), so the power could take records away. Turn {found} on, then start again.',
  'disk-full':
    'The disk of the store is full. Nothing of this was written, and what was recorded before is safe. Make room, then do it again.',
  'read-only-store':
    'The store may only be read here: its disk, folder or database does not let us write. Nothing was changed.',
  'store-busy': 'Another program holds the store. Close it, or wait, then do it again. Nothing was written.',
  'store-unreachable':
    'The database of DATABASE_URL cannot be reached, or does not let us in. Nothing was written; do it again when it is there.',
  'no-backup': 'There is no file "{found}".',
  'not-a-backup': '"{found}" is not a backup of Leywright. Nothing was changed.',
  'damaged-backup': 'The backup is damaged, so it was not used and nothing was changed. Take an earlier one. ({found})',
  'broken-book':
    'The book of "{found}" in this file is not as it was written: its entry {seq:plain} does not fit its seal. It was not used and nothing was changed; take an earlier one.',
  'cannot-open': 'The store cannot be opened: {found}',
  'no-such-farm': 'There is no farm "{found}" here.',
  'no-such-person': 'Nobody called "{found}" is written down on this farm.',
  'no-sample': 'The sample farm is not in this copy: there is no demo folder.',
  'no-such-figure': 'There is no figure "{found}" in this plan.',
  'no-such-lot':
    'Nothing in the book is known as "{found}". Ask for run/…, drop/…, lot/…, seed/…, batch/…, bin/… or plot/….',
  'no-such-model': 'There is no model "{found}".',
  'no-such-page': 'There is nothing at {found}.',
  'no-such-method': '{found} is not among what can be asked here.',
  'id-taken': 'A farm "{found}" is here already. Give the new one another name.',
  'entry-differs':
    'A record with the id {found} is in the book with other words. Correct it by a new record that names it.',
  'entry-of-other-farm': 'The record {found} belongs to another farm.',
  'not-as-asked': '{field}: {said}',
  'not-json': 'What was sent is not JSON that can be read.',
  'too-large': 'What was sent is too large: {limitMb:number} MB is the most.',
  'wrong-content': 'This takes JSON or a zip, not "{found}".',
  'wrong-host': 'Leywright answers only on this machine. Open it at {address}.',
  'other-site': 'Another site asked to write here. Nothing was written.',
  'place-unknown': 'No place "{found}" is known here. Give its latitude, such as 52.3.',
  'year-out-of-range': '{found} is not a year this plan can reach.',
  'shape-missing': '{field} has to be given.',
  'shape-number': '{field} has to be a number.',
  'shape-int': '{field} has to be a whole number.',
  'shape-string': '{field} has to be a word.',
  'shape-boolean': '{field} has to be true or false.',
  'shape-array': '{field} has to be a list.',
  'shape-object': '{field} has to be an object, such as { "plots": 6 }.',
  'shape-record': '{field} has to be an object, such as { "plots.csv": "…" }.',
  'shape-too-small': '{field} is too small: {least} is the least.',
  'shape-too-big': '{field} is too large: {most} is the most.',
  'shape-other': '{field} is not as it has to be.',
  'calc-missing': '{field} is missing.',
  'calc-not-known': 'This model knows no "{field}".',
  'calc-not-a-number': '{field}: {found} is not a number.',
  'calc-not-text': '{field}: {found} is not a word.',
  'calc-not-a-list': '{field}: {found} is not a list.',
  'calc-lists-differ-in-length': '{field}: the lists are not of one length.',
  'calc-no-answer': '{field}: these figures have no answer. {found}',
  'our-fault':
    'That is a fault of Leywright, not of yours. Nothing was written. Try again; if it stays, keep the number {reference}.',
};
