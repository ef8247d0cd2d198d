import { median } from '../stats/median.ts';
import type { Stroke } from './stroke.ts';

/**
 * A room colours every stroke's level by its own spectrum: 0.4 dB from stroke to stroke in rendered rooms, and no
 * single stroke shows it. Whether there is a room shows in how far the sound falls within 40 ms of a loud stroke: 20 dB
 * and more on a dry pad, 12 or less in rooms (and on ringing drums, which can't be told from them). Fitted to rendered
 * takes.
 */
const room = { errorDb: 0.4, wetFallDb: 12, dryFallDb: 20 };

/** Adds the room's part to the standard errors of a take's levels. */
export function withRoomError(strokes: readonly Stroke[]): Stroke[] {
  const pads = strokes.filter(({ sound, timbre }) => sound === 'pad' && timbre !== null && !timbre.cut);
  if (pads.length === 0) return [...strokes];
  const middle = median(pads.map(({ levelDb }) => levelDb));
  const falls = pads.filter(({ levelDb }) => levelDb >= middle).map(({ timbre }) => timbre!.values.at(-1)!);
  const share = (room.dryFallDb - median(falls)) / (room.dryFallDb - room.wetFallDb);
  const error = room.errorDb * Math.min(1, Math.max(0, share));
  return strokes.map((stroke) =>
    stroke.timbre === null ? stroke : { ...stroke, levelSe: Math.hypot(stroke.levelSe, error) },
  );
}
