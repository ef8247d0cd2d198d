import { useState } from 'preact/hooks';
import { limits } from '../../core/exercise/limits.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import type { PractiseChoice } from './practise-choice.ts';

interface Props {
  readonly sheet: PractiseChoice['sheet'];
  /** What is wrong with the sheet, or null. */
  readonly fault: string | null;
  readonly open: (sheet: { readonly name: string; readonly text: string }) => void;
}

/** Bytes past which a file is no sheet: every character of the longest one in four bytes. */
const mostBytes = 4 * limits.sheetCharacters;

/** A teacher's sheet, dropped here or chosen. */
export function SheetFile({ sheet, fault, open }: Props) {
  const [said, setSaid] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    const read = await sheetOf(file);
    setSaid(read.said);
    if (read.text !== null) open({ name: file.name, text: read.text });
  };
  return (
    <fieldset
      aria-label="A sheet to open or to drop here"
      class="sheet-file"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void take(event.dataTransfer?.files[0]);
      }}
    >
      <label class="button">
        {sheet === null ? 'Open a sheet' : 'Open another sheet'}
        <input
          type="file"
          class="hidden"
          accept=".sheet,.txt,text/plain,.musicxml,.mxl,.xml"
          onChange={({ currentTarget }) => {
            void take(currentTarget.files?.[0]);
            currentTarget.value = '';
          }}
        />
      </label>
      <p class="quiet">
        or drop it here. A sheet is a text file with several lines to play in a row, or a score (MusicXML)
        from a notation program.
      </p>
      {sheet !== null && (
        <p>
          Open now: <strong>{sheet.name}</strong>
        </p>
      )}
      <p class="fault" role="status">
        {said ?? (sheet === null ? null : fault)}
      </p>
    </fieldset>
  );
}

/** What was read from a file. */
interface ReadSheet {
  /** The sheet as text, or null where the file is none. */
  readonly text: string | null;
  /** What is wrong with the file, or was left out of a score or added to it. */
  readonly said: string | null;
}

async function sheetOf(file: File): Promise<ReadSheet> {
  const none = `"${file.name}" is no sheet: a sheet is a short text file, such as week-7.sheet, or a score (MusicXML).`;
  if (file.size > mostBytes) return { text: null, said: none };
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (mayBeScore(bytes)) return await sheetOfScore(bytes);
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\0')
      ? { text: null, said: none }
      : { text: text.replace(/\r\n?/g, '\n'), said: null };
  } catch {
    return { text: null, said: none };
  }
}

/** XML, UTF-16 or a zip: what reads scores is loaded for those alone. */
const mayBeScore = ([first = 0]: Uint8Array): boolean =>
  ['<', 'P', '\xef', '\xfe', '\xff'].includes(String.fromCharCode(first));

async function sheetOfScore(bytes: Uint8Array): Promise<ReadSheet> {
  const { readSheetFile } = await import('../../formats/read-sheet-file.ts');
  const read = readSheetFile(bytes);
  if (!read.ok) return { text: null, said: read.faults[0] ?? null };
  return { text: writeSheet(read.sheet), said: read.notes.length === 0 ? null : read.notes.join(' ') };
}
