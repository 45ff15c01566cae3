import { type ChangeEvent, type DragEvent, useRef, useState } from 'react';
import { words } from '../../words.ts';
import type { FolderFile } from '../../worker/plan-source.ts';
import { filesDropped, filesPicked } from './folder-files.ts';

/** Opens a farm folder: choose it, choose a zip of it, or drop either here. */
export function FolderDoor({ onFiles }: { readonly onFiles: (files: readonly FolderFile[]) => void }) {
  const folder = useRef<HTMLInputElement>(null);
  const zip = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const picked = async ({ currentTarget }: ChangeEvent<HTMLInputElement>) => {
    const files = await filesPicked(currentTarget.files);
    currentTarget.value = ''; // so that the same folder, mended, can be chosen again
    onFiles(files);
  };
  const drop = async (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    onFiles(await filesDropped(event.dataTransfer));
  };
  return (
    <section
      className={isOver ? 'folder-door over' : 'folder-door'}
      aria-label={words.first.folder}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <h2>{words.first.folder}</h2>
      <p>{isOver ? words.first.drop : words.first.folderBody}</p>
      <input
        ref={folder}
        className="hidden-text"
        type="file"
        tabIndex={-1}
        aria-hidden="true"
        multiple
        {...{ webkitdirectory: '' }}
        onChange={picked}
      />
      <input
        ref={zip}
        className="hidden-text"
        type="file"
        tabIndex={-1}
        aria-hidden="true"
        accept=".zip"
        onChange={picked}
      />
      <button type="button" className="link" onClick={() => folder.current?.click()}>
        {words.first.folderGo}
      </button>{' '}
      <button type="button" className="link" onClick={() => zip.current?.click()}>
        {words.first.zipGo}
      </button>
    </section>
  );
}
