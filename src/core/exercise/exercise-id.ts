import { listExercises } from './catalogue.ts';
import type { Beat } from './sheet.ts';
import { swapHands } from './swap-hands.ts';
import { writeNotation } from './write-notation.ts';

/**
 * An id made from the beats alone, so that the same exercise goes by the same id in every sheet: the catalogue's
 * where it has exactly these beats, otherwise `own-` and the 64-bit FNV-1a hash (draft-eastlake-fnv) of the
 * notation in hexadecimal.
 *
 * @example exerciseId(beats) // 'triplet-1-hand-to-hand' for '>RLR >LRL >RLR >LRL'
 */
export function exerciseId(beats: readonly Beat[]): string {
  const notation = writeNotation(beats);
  const listed = listExercises().find((exercise) => exercise.notation === notation);
  if (listed !== undefined) return listed.id;
  const swapped = writeNotation(swapHands(beats));
  const listedSwapped = listExercises().find((exercise) => exercise.notation === swapped);
  if (listedSwapped !== undefined) return `${listedSwapped.id}-left`;
  let hash = 0xcbf29ce484222325n;
  for (const sign of notation) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(sign.charCodeAt(0))) * 0x100000001b3n);
  }
  return `own-${hash.toString(16).padStart(16, '0')}`;
}
