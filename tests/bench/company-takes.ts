import { renderTake } from '../../fixtures/generator/render-take.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import type { TruthStroke } from '../../fixtures/generator/take-truth.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { type CheckTake, checkTakeSpec } from './check-takes.ts';

/** A take with somebody else practising in the same room, at a tempo of his own. */
interface CompanyTake {
  readonly sheet: Sheet;
  readonly sampleRate: number;
  /** The player alone, and both. */
  readonly alone: Float32Array;
  readonly together: Float32Array;
  readonly strokes: readonly TruthStroke[];
}

/** The other's accents are so many dB under the player's, through the reverberation of a school's room. */
export function companyTake(
  take: CheckTake,
  other: CheckTake,
  { seed, tempo, underDb }: { readonly seed: number; readonly tempo: number; readonly underDb: number },
): CompanyTake {
  const { sheet, spec } = checkTakeSpec(take, seed);
  const { samples, sampleRate, truth } = renderTake(spec);
  const far = checkTakeSpec({ ...other, bpm: Math.round(take.bpm * tempo) }, seed + 1).spec;
  const heard = renderTake({ ...far, room: rooms[2]!, sampleRate, click: null }).samples;
  const gain = 10 ** (-underDb / 20);
  const together = samples.map((x, i) => x + gain * (heard[i] ?? 0));
  return { sheet, sampleRate, alone: samples, together, strokes: truth.strokes };
}
