import { readFileSync } from 'node:fs';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import type { Source } from '../../src/core/signal/source.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';
import { sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';

/** The recording and the sheet of a sample take. */
export function openedSample(name: string): { readonly source: Source; readonly sheet: Sheet } {
  const bytes = memoryBytes(readFileSync(sampleTakePath(name)));
  const outcome = riffLayout(bytes);
  const parsed = parseSheet(readFileSync(sampleSheetPath(name), 'utf8'));
  if (!outcome.ok || !parsed.ok) throw new Error(`the sample take ${name} can't be read`);
  return { source: wavSource(bytes, outcome.layout), sheet: parsed.sheet };
}
