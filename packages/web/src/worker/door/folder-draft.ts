/** A folder that was given and is not taken in yet: its files, what is wrong with them, and their mending. */
import { filesInZip, mend as mending, zipFolder } from '@leywright/book';
import type { ServerProblem } from '../book/server.ts';
import type { FolderFile, FolderMend, FolderProblem, MendKind } from '../plan-source.ts';

type Files = ReadonlyMap<string, string | Uint8Array>;

export interface FolderDraft {
  /** By path; null for a zip that cannot be opened. */
  readonly files: Files | null;
  /** As it goes to the server. */
  readonly zip: Uint8Array;
}

export function draftOf(given: readonly FolderFile[]): FolderDraft {
  const [first] = given;
  if (given.length === 1 && first !== undefined && /\.zip$/i.test(first.path)) {
    const zip = new Uint8Array(first.bytes);
    return { files: filesInZip(zip), zip };
  }
  return packed(new Map(given.map(({ path, bytes }) => [path, new Uint8Array(bytes)])));
}

/** Problems in turn, each with what is written at its place. */
export function tellFolder(draft: FolderDraft, problems: readonly ServerProblem[]): readonly FolderProblem[] {
  return problems.map((problem, at) => {
    const { mend, written } = mendOf(draft, problem);
    const { line, column, found, nearest, gravity } = problem;
    return {
      id: String(at),
      file: problem.file ?? '',
      line,
      column,
      found,
      nearest,
      sentence: withoutPlace(problem),
      stops: gravity === 'stops',
      mend,
      written,
    };
  });
}

/** The folder with each mend at the place of its problem. */
export function mended(
  draft: FolderDraft,
  problems: readonly FolderProblem[],
  mends: readonly FolderMend[],
): FolderDraft {
  if (draft.files === null) return draft;
  const files = new Map(draft.files);
  const kindOf = (id: string) => problems.find((one) => one.id === id)?.mend;
  // A whole file first, so that a cell mended in it besides is not lost.
  const inTurn = [...mends].sort((a, b) => Number(kindOf(b.problem) === 'file') - Number(kindOf(a.problem) === 'file'));
  for (const { problem: id, to } of inTurn) {
    const problem = problems.find((one) => one.id === id);
    const path = problem === undefined ? null : pathOf(files, problem.file);
    const bytes = path === null ? undefined : files.get(path);
    if (problem === undefined || path === null || bytes === undefined) continue;
    const text = problem.mend === 'file' ? to : mending.writeAt(bytes, problem, to);
    if (text !== null) files.set(path, text);
  }
  return packed(files);
}

function packed(files: Files): FolderDraft {
  return { files, zip: zipFolder(files) };
}

/** A file larger than this is mended where it was made. */
const longestText = 40_000;

function mendOf({ files }: FolderDraft, problem: ServerProblem): { readonly mend: MendKind; readonly written: string } {
  const path = files === null || problem.file === null ? null : pathOf(files, problem.file);
  const bytes = path === null ? undefined : files?.get(path);
  if (path === null || bytes === undefined || problem.file === null) return { mend: 'none', written: '' };
  const { file, line, column } = problem;
  // A name that has no place is not put right by its value.
  const cell = problem.code === 'unknown-key' ? null : mending.writtenAt(bytes, { file, line, column });
  if (cell !== null) return { mend: 'cell', written: cell };
  const text = typeof bytes === 'string' ? bytes : decoded(bytes);
  return text === null || text.length > longestText ? { mend: 'none', written: '' } : { mend: 'file', written: text };
}

/** The path whose file the reader calls `file`: without the folder's own name, in small letters. */
function pathOf(files: Files, file: string): string | null {
  return [...files.keys()].find((path) => path === file || path.split('/').at(-1)?.toLowerCase() === file) ?? null;
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** The server's sentence begins with the place, which stands in its own columns here. */
function withoutPlace({ sentence, file, line, column }: ServerProblem): string {
  const place = [file, line === null ? null : `line ${line}`, column].filter((part) => part !== null && part !== '');
  const lead = `${place.join(', ')}: `;
  return sentence.startsWith(lead) ? sentence.slice(lead.length) : sentence;
}
