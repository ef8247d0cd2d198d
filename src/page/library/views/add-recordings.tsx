import { useEffect, useState } from 'preact/hooks';
import type { ListedSheet } from '../../../library/list-sheets.ts';
import { sharedEngine } from '../../engine/shared-engine.ts';
import { sharedMark, takeSharedFiles } from '../../offline/shared-files.ts';
import { looksLikeTakeFile } from '../import-files.ts';
import { sharedImportQueue } from '../import-queue.ts';
import { pageLibrary } from '../page-library.ts';
import { counted } from '../take-words.ts';
import { QueueList } from './queue-list.tsx';
import { WhatWasPlayed } from './what-was-played.tsx';

interface Props {
  readonly sheets: readonly ListedSheet[];
  /** Called whenever a take has come in. */
  readonly changed: () => void;
}

/** Recordings and take files into the library: dropped, chosen, or shared to the page. */
export function AddRecordings({ sheets, changed }: Props) {
  const [, redraw] = useState(0);
  const [over, setOver] = useState(false);
  const [asking, setAsking] = useState<readonly File[]>([]);
  const [sheetText, setSheetText] = useState<string | null>(null);
  const queue = sharedImportQueue();
  const into = () => ({ engine: sharedEngine(), library: pageLibrary() });
  const receive = (files: readonly File[]) => {
    const takeFiles = files.filter(looksLikeTakeFile);
    if (takeFiles.length > 0) queue.add(takeFiles, { ...into(), sheetText: null });
    setAsking((asked) => [...asked, ...files.filter((file) => !looksLikeTakeFile(file))]);
  };
  useEffect(() => {
    // Only the page that they were sent to: one that is about to give way to it would take them along.
    if (location.hash.endsWith(sharedMark)) void takeSharedFiles().then(receive);
    return queue.onChange(() => {
      redraw((count) => count + 1);
      changed();
    });
  }, []);
  const go = () => {
    queue.add(asking, { ...into(), sheetText });
    setAsking([]);
  };
  const files = queue.files();
  return (
    <section class="add-recordings" aria-labelledby="add">
      <h2 id="add">Recordings from elsewhere</h2>
      <fieldset
        aria-label="Recordings and take files to open or to drop here"
        class={over ? 'drop over' : 'drop'}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          receive([...(event.dataTransfer?.files ?? [])]);
        }}
      >
        <label class="button">
          Choose recordings or take files
          <input
            type="file"
            class="hidden"
            multiple
            onChange={({ currentTarget }) => {
              receive([...(currentTarget.files ?? [])]);
              currentTarget.value = '';
            }}
          />
        </label>
        <p class="quiet">
          or drop them here, as many as you like. Take files (.take.zip) bring everything with them; for
          recordings from a phone you say what was played.
        </p>
      </fieldset>
      {asking.length > 0 && (
        <div class="asking">
          <p>
            <strong>{counted(asking.length, 'recording')}</strong>:{' '}
            {asking.map(({ name }) => name).join(', ')}
          </p>
          <WhatWasPlayed sheets={sheets} tell={setSheetText} />
          <div class="actions">
            <button type="button" class="main" disabled={sheetText === null} onClick={go}>
              Grade and keep {asking.length === 1 ? 'it' : `all ${asking.length}`}
            </button>
            <button type="button" onClick={() => setAsking([])}>
              {asking.length === 1 ? 'Leave it out' : 'Leave them out'}
            </button>
          </div>
        </div>
      )}
      {files.length > 0 && <QueueList files={files} stop={queue.stop} clear={queue.clear} />}
    </section>
  );
}
