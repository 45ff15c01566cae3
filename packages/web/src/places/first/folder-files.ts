import type { FolderFile } from '../../worker/plan-source.ts';

/** The files a person picked, by their path inside the folder (without the folder's own name). */
export async function filesPicked(list: FileList | null): Promise<readonly FolderFile[]> {
  return Promise.all(
    [...(list ?? [])].map(async (file) => ({
      path: insidePath(file.webkitRelativePath === '' ? file.name : file.webkitRelativePath),
      bytes: await file.arrayBuffer(),
    })),
  );
}

/** The files of what was dropped: a folder is walked through, a zip or a single file comes as it is. */
export async function filesDropped(transfer: DataTransfer): Promise<readonly FolderFile[]> {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
  const files = await Promise.all(entries.map((entry) => filesOf(entry)));
  return files.flat().map((file) => ({ ...file, path: insidePath(file.path) }));
}

async function filesOf(entry: FileSystemEntry): Promise<readonly FolderFile[]> {
  if (entry.isFile) {
    const file = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject));
    return [{ path: entry.fullPath.replace(/^\//, ''), bytes: await file.arrayBuffer() }];
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const inside: FileSystemEntry[] = [];
  for (;;) {
    const batch = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (batch.length === 0) break; // a directory is handed over at most a hundred entries at a time
    inside.push(...batch);
  }
  return (await Promise.all(inside.map(filesOf))).flat();
}

function insidePath(path: string): string {
  const parts = path.split('/');
  return parts.length > 1 ? parts.slice(1).join('/') : path;
}
