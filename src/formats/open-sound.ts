import type { Source } from '../core/signal/source.ts';
import { aiffLayout } from './aiff-layout.ts';
import type { Bytes } from './bytes.ts';
import { cafLayout } from './caf-layout.ts';
import { cafParts } from './caf-parts.ts';
import type { Gap } from './coded/join-sound.ts';
import type { DecodingMeans } from './coded/open-coded.ts';
import { keptSource } from './kept-source.ts';
import type { LayoutFault, RecordingNote } from './recording-fault.ts';
import { isDecoded, kindBytes, type RecordingKind, recordingKind } from './recording-kind.ts';
import { riffLayout } from './riff-layout.ts';
import type { SampleLayoutOutcome } from './sample-layout.ts';
import { wavSource } from './wav-source.ts';

export interface OpenSound {
  readonly ok: true;
  readonly source: Source;
  readonly notes: readonly RecordingNote[];
  /** Stretches that are lost and stand as silence. */
  readonly gaps: readonly Gap[];
  /** After this the source can't be read any more. */
  close(): void;
}

type SoundOutcome = OpenSound | { readonly ok: false; readonly fault: LayoutFault };

/**
 * Makes a recording out of a file's bytes, whatever kind of file it is, the same in Node and in the browser: samples
 * of a wave, AIFF or CAF file are read as they are asked for and kept when they aren't many, all others are decoded at
 * once. Rejects with what `bytes` or the scratch file throw.
 *
 * @example
 * const opened = await openSound(memoryBytes(file), {});
 * if (opened.ok) opened.source.read(0, 0, 1024);
 */
export async function openSound(bytes: Bytes, means: DecodingMeans): Promise<SoundOutcome> {
  if (bytes.length === 0) return { ok: false, fault: { code: 'empty-file', facts: {} } };
  const kind = recordingKind(bytes.read(0, Math.min(kindBytes, bytes.length)));
  const outcome = plainLayout(bytes, kind);
  if (outcome === null) {
    const { openCoded } = await import('./coded/open-coded.ts');
    return openCoded(bytes, kind, means);
  }
  if (!outcome.ok) return outcome;
  const source = keptSource(wavSource(bytes, outcome.layout));
  return { ok: true, source, notes: outcome.layout.notes, gaps: [], close: () => undefined };
}

/** Where a file of plain samples has them; null for one whose sound is coded. */
function plainLayout(bytes: Bytes, kind: RecordingKind): SampleLayoutOutcome | null {
  if (kind === 'aiff') return aiffLayout(bytes);
  if (kind === 'caf') {
    const parts = cafParts(bytes);
    return parts?.coding === 'lpcm' ? cafLayout(parts) : null;
  }
  return isDecoded(kind) ? null : riffLayout(bytes);
}
