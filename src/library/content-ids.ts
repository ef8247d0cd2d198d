import { sha256Hex } from './sha256-hex.ts';

/** 128 bits of a hash: no two contents ever share them. */
const idLength = 32;

/** Part of a recording, s. */
export interface RecordingPart {
  readonly from: number;
  readonly to: number;
}

/** The id of a sheet: it follows from its text alone. */
export async function sheetId(text: string): Promise<string> {
  return (await sha256Hex(`sheet\n${text}`)).slice(0, idLength);
}

/**
 * The id of a take: it follows from the recording, the sheet it was held against and the part of the recording that it
 * is, so the same take is known again in any library, and one graded anew stays the same take. `recording` is the
 * SHA-256 of the recording, or of the result where the recording isn't kept.
 *
 * @example await takeId({ recording: hash, sheetText, part: null }) // '3f0a…', 32 characters
 */
export async function takeId(take: {
  readonly recording: string;
  readonly sheetText: string;
  readonly part: RecordingPart | null;
}): Promise<string> {
  const part = take.part === null ? 'whole' : `${take.part.from} ${take.part.to}`;
  return (await sha256Hex(`take\n${take.recording}\n${part}\n${take.sheetText}`)).slice(0, idLength);
}
