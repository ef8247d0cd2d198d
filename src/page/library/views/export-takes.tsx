import { useState } from 'preact/hooks';
import type { ListedTake } from '../../../library/listed-takes.ts';
import { exportParts } from '../export-parts.ts';
import { faultInWords } from '../fault-words.ts';
import { localDay } from '../local-day.ts';
import { pageLibrary } from '../page-library.ts';
import { saveFile } from '../save-file.ts';

interface Props {
  readonly label: string;
  readonly disabled?: boolean;
  /** The takes to write, in their order. */
  readonly takes: () => Promise<readonly ListedTake[]>;
}

/** A button that writes takes as take files: several takes in one file, in more files where one grew too large. */
export function ExportTakes({ label, takes, disabled = false }: Props) {
  const [working, setWorking] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const go = async () => {
    setFault(null);
    setWorking('Being written …');
    try {
      const parts = exportParts(await takes(), localDay(Date.now()));
      for (const [index, { name, ids }] of parts.entries()) {
        if (parts.length > 1) setWorking(`Writing file ${index + 1} of ${parts.length} …`);
        saveFile(name, await pageLibrary().exportTakes(ids));
      }
    } catch (error) {
      setFault(faultInWords(error));
    }
    setWorking(null);
  };
  return (
    <>
      <button type="button" disabled={disabled || working !== null} onClick={go}>
        {working ?? label}
      </button>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
    </>
  );
}
