import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { LibraryClient } from '../../library/library-calls.ts';
import { takeFileFaultSentence } from '../../library/take-file/take-file-fault-sentence.ts';
import type { Engine } from '../engine/engine.ts';
import { faultInWords } from './fault-words.ts';
import { keepGradedTake } from './keep-graded-take.ts';
import { counted } from './take-words.ts';

/** What became of one file. */
export interface ImportedFile {
  readonly state: 'kept' | 'already-there' | 'failed';
  readonly sentence: string;
  /** Takes that are in the library now because of it, or were before. */
  readonly ids: readonly string[];
}

/** Where recordings go, and what was played in them. */
export interface ImportInto {
  readonly engine: Pick<Engine, 'grade'>;
  readonly library: LibraryClient;
  /** The sheet's text, or null while nothing was chosen: take files bring their own. */
  readonly sheetText: string | null;
}

/** Whether a file is a take file by its first bytes (PKWARE, APPNOTE.TXT: a local file header). */
const isArchive = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3;

/** Whether a file can be a take file by its name, before it is read. */
export const looksLikeTakeFile = ({ name }: Pick<File, 'name'>): boolean => /\.zip$/i.test(name);

/**
 * Takes a file in: a take file with all its takes, anything else as a recording, which is graded and kept. Never
 * rejects: whatever goes wrong becomes a sentence.
 */
export async function importFile(file: File, into: ImportInto): Promise<ImportedFile> {
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    return isArchive(bytes)
      ? await importTakes(file.name, bytes, into)
      : await gradeAndKeep(file, bytes, into);
  } catch (error) {
    return { state: 'failed', sentence: faultInWords(error), ids: [] };
  }
}

async function gradeAndKeep(
  file: File,
  bytes: Uint8Array,
  { engine, library, sheetText }: ImportInto,
): Promise<ImportedFile> {
  if (sheetText === null) throw new Error('Say first what was played in this recording.');
  const { name } = file;
  const result = await engine.grade({ bytes }, { name, sheet: sheetOf(sheetText) });
  const { id, outcome } = await keepGradedTake(
    { result, sheetText, audio: { name, bytes }, recordedAt: file.lastModified },
    library,
  );
  if (outcome === 'already-there') return { state: outcome, sentence: 'Is there already.', ids: [id] };
  const sentence =
    result.grading.state === 'graded'
      ? 'Graded and kept.'
      : 'Kept, but it could not be graded: open it to see why.';
  return { state: 'kept', sentence, ids: [id] };
}

async function importTakes(name: string, bytes: Uint8Array, { library }: ImportInto): Promise<ImportedFile> {
  const outcome = await library.importTakeFile({ bytes, keptAt: Date.now() });
  if (!outcome.ok) return { state: 'failed', sentence: takeFileFaultSentence(name, outcome.fault), ids: [] };
  const { takes, faults } = outcome;
  const kept = takes.filter((take) => take.outcome === 'kept').length;
  const remarks = takes.reduce((sum, take) => sum + take.newRemarks, 0);
  const parts = [
    kept > 0 ? `${counted(kept, 'take')} kept.` : '',
    takes.length > kept ? `${counted(takes.length - kept, 'take')} there already.` : '',
    remarks > 0 && takes.length > kept ? `${counted(remarks, 'new remark')}.` : '',
    ...faults.map((fault) => takeFileFaultSentence(name, fault)),
  ];
  return {
    state: faults.length > 0 ? 'failed' : kept > 0 || remarks > 0 ? 'kept' : 'already-there',
    sentence: parts.filter((part) => part !== '').join(' '),
    ids: takes.map(({ id }) => id),
  };
}

function sheetOf(text: string): Sheet {
  const parsed = parseSheet(text);
  if (!parsed.ok) throw new Error("The exercise that was chosen can't be read. Choose it again.");
  return parsed.sheet;
}
