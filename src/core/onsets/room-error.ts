import { median } from '../stats/median.ts';
import type { RoomSound } from './room-sound.ts';
import type { Stroke } from './stroke.ts';

/**
 * A room colours every stroke's level by its own spectrum, a third of a decibel from stroke to stroke in rendered
 * rooms and more where reflections are louder than the stroke, and no single stroke shows it. There is a room where
 * the sound falls little within 40 ms of a loud stroke (20 dB and more on a dry pad, 12 or less in rooms) and isn't
 * ringing that can be predicted (snares with wires reach 15 dB, rooms 13). Fitted to rendered takes.
 */
const room = {
  errorDb: 0.35,
  fallDb: { wet: 13, dry: 20 },
  predictedDb: { wet: 13.5, dry: 15.5 },
  /** Reflections louder than this against the stroke add so much error for each decibel. */
  reflections: { directDb: -2.5, share: 0.085 },
};

/** Adds the room's part to the standard errors of a take's levels; `heard` null: nothing is known of ringing. */
export function withRoomError(strokes: readonly Stroke[], heard: RoomSound | null): Stroke[] {
  const pads = strokes.filter(({ sound, timbre }) => sound === 'pad' && timbre !== null && !timbre.cut);
  if (pads.length === 0) return [...strokes];
  const middle = median(pads.map(({ levelDb }) => levelDb));
  const falls = pads.filter(({ levelDb }) => levelDb >= middle).map(({ timbre }) => timbre!.values.at(-1)!);
  const slow = wetness(median(falls), room.fallDb);
  const dense = heard === null ? 1 : wetness(heard.predictedDb, room.predictedDb);
  const { directDb, share } = room.reflections;
  const reflected = heard === null ? 0 : Math.max(0, directDb - heard.directDb);
  const error = Math.min(slow, dense) * (room.errorDb + share * reflected);
  return strokes.map((stroke) =>
    stroke.timbre === null ? stroke : { ...stroke, levelSe: Math.hypot(stroke.levelSe, error) },
  );
}

/** 1 at `wet` and below, 0 at `dry` and above, straight in between. */
function wetness(value: number, { wet, dry }: { readonly wet: number; readonly dry: number }): number {
  return Math.min(1, Math.max(0, (dry - value) / (dry - wet)));
}
