import { useState } from 'preact/hooks';
import { limits } from '../../core/exercise/limits.ts';
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
  const [refused, setRefused] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    const text = file.size > mostBytes ? null : await readAsText(file);
    setRefused(
      text === null
        ? `“${file.name}” is no sheet: a sheet is a short text file, such as week-7.sheet.`
        : null,
    );
    if (text !== null) open({ name: file.name, text });
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
          accept=".sheet,.txt,text/plain"
          onChange={({ currentTarget }) => {
            void take(currentTarget.files?.[0]);
            currentTarget.value = '';
          }}
        />
      </label>
      <p class="quiet">or drop it here. A sheet is a text file with several lines to play in a row.</p>
      {sheet !== null && (
        <p>
          Open now: <strong>{sheet.name}</strong>
        </p>
      )}
      <p class="fault" role="status">
        {refused ?? (sheet === null ? null : fault)}
      </p>
    </fieldset>
  );
}

/** A file's text (UTF-8); null for what isn't text. */
async function readAsText(file: File): Promise<string | null> {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
    return text.includes('\0') ? null : text.replace(/\r\n?/g, '\n');
  } catch {
    return null;
  }
}
