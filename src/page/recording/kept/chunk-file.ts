import type { RecordingGap } from '../../../core/grading/recording-gaps.ts';

/**
 * A recording as it is written while it comes: `EVHTAKE1`, the head's length (uint32) and the head (JSON, UTF-8), then
 * pieces. A piece: its kind (uint32), its length in bytes (uint32), the frame of the recording at which it begins
 * (float64), and its samples (float32) or a note (JSON). All little-endian. Whatever its end, what stands before is
 * whole.
 */
export interface TakeHead {
  readonly id: string;
  /** When recording began, ISO 8601. */
  readonly startedAt: string;
  readonly sampleRate: number;
  /** The sheet that is played, as text; untrusted. */
  readonly sheetText: string;
  readonly name: string;
}

/** Something that happened, at a frame of the recording. */
export interface TakeNote {
  readonly frame: number;
  readonly what: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

interface ReadTake {
  readonly head: TakeHead;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly gaps: readonly RecordingGap[];
  readonly notes: readonly TakeNote[];
}

const magic = 'EVHTAKE1';
const pieceHead = 16;
const kinds = { samples: 1, note: 2 } as const;
/** A piece that says it lies further than this beyond the one before is damaged, s; and so are more of them in all. */
const longestGap = 120;
const longestGaps = 600;
/** Hz; far past what a browser records at, so that no damaged head asks for all memory. */
const highestRate = 192_000;
const mostHeadBytes = 1 << 20;

export function encodeHead(head: TakeHead): Uint8Array<ArrayBuffer> {
  const text = new TextEncoder().encode(JSON.stringify(head));
  const bytes = new Uint8Array(12 + text.length);
  for (let i = 0; i < magic.length; i++) bytes[i] = magic.charCodeAt(i);
  new DataView(bytes.buffer).setUint32(8, text.length, true);
  bytes.set(text, 12);
  return bytes;
}

function piece(kind: number, frame: number, content: Uint8Array): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(pieceHead + content.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, kind, true);
  view.setUint32(4, content.length, true);
  view.setFloat64(8, frame, true);
  bytes.set(content, pieceHead);
  return bytes;
}

export function encodeSamples(frame: number, samples: Float32Array): Uint8Array<ArrayBuffer> {
  const content = new Uint8Array(4 * samples.length);
  const view = new DataView(content.buffer);
  samples.forEach((sample, i) => {
    view.setFloat32(4 * i, sample, true);
  });
  return piece(kinds.samples, frame, content);
}

export function encodeNote({ frame, what, facts }: TakeNote): Uint8Array<ArrayBuffer> {
  return piece(kinds.note, frame, new TextEncoder().encode(JSON.stringify({ what, facts })));
}

/** The head alone, and where the pieces begin; null where the bytes don't begin like a take. */
export function decodeHead(
  bytes: Uint8Array<ArrayBuffer>,
): { readonly head: TakeHead; readonly end: number } | null {
  if (bytes.length < 12 || String.fromCharCode(...bytes.subarray(0, 8)) !== magic) return null;
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(8, true);
  if (length > mostHeadBytes || 12 + length > bytes.length) return null;
  const head = parsed(bytes.subarray(12, 12 + length)) as Partial<TakeHead> | null;
  const { id, startedAt, sampleRate, sheetText, name } = head ?? {};
  const isText = [id, startedAt, sheetText, name].every((text) => typeof text === 'string');
  if (!isText || typeof sampleRate !== 'number' || !(sampleRate > 0 && sampleRate <= highestRate))
    return null;
  return { head: { id, startedAt, sampleRate, sheetText, name } as TakeHead, end: 12 + length };
}

/**
 * Reads a take back, up to where it breaks off; frames that no piece holds are silence and noted as gaps. Null where
 * the bytes aren't a take.
 *
 * @example decodeTake(bytes)?.samples.length // frames from the first to the last that was written
 */
export function decodeTake(bytes: Uint8Array<ArrayBuffer>): ReadTake | null {
  const begun = decodeHead(bytes);
  if (begun === null) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const parts: { readonly frame: number; readonly from: number; readonly count: number }[] = [];
  const notes: TakeNote[] = [];
  let length = 0;
  let lost = 0;
  const gaps: RecordingGap[] = [];
  for (let at = begun.end; at + pieceHead <= bytes.length; ) {
    const kind = view.getUint32(at, true);
    const size = view.getUint32(at + 4, true);
    const frame = view.getFloat64(at + 8, true);
    const from = at + pieceHead;
    const there = Math.min(size, bytes.length - from);
    const missing = Math.max(0, frame - length);
    if (!Number.isInteger(frame) || frame < 0) break;
    if (missing > longestGap * begun.head.sampleRate || lost + missing > longestGaps * begun.head.sampleRate)
      break;
    if (kind === kinds.samples) {
      const count = Math.floor(there / 4);
      if (count > 0) lost += missing;
      if (count > 0 && missing > 0) gaps.push({ at: length, frames: missing });
      if (count > 0) parts.push({ frame, from, count });
      if (count > 0) length = Math.max(length, frame + count);
    } else if (kind === kinds.note && there === size) {
      const note = parsed(bytes.subarray(from, from + size)) as Partial<TakeNote> | null;
      if (typeof note?.what === 'string') notes.push({ frame, what: note.what, facts: note.facts ?? {} });
    } else break;
    at = from + size;
  }
  const samples = new Float32Array(length);
  for (const { frame, from, count } of parts)
    for (let i = 0; i < count; i++) samples[frame + i] = view.getFloat32(from + 4 * i, true);
  return { head: begun.head, samples, gaps, notes };
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
}
