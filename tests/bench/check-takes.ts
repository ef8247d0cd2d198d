import { microphones } from '../../fixtures/generator/microphone.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { recordedStrokes } from '../../fixtures/generator/recorded-strokes.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { chainPlayer } from './grading-chains.ts';

/** A kind of take for judging the check of recordings. */
export interface CheckTake {
  readonly name: string;
  readonly sheetText: string;
  readonly bpm: number;
  readonly change: () => Partial<TakeSpec>;
}

const round = '>RLR >LRL R>LR L>RL RL>R LR>L ; times: 6';
const hands = '>RLR >LRL ; times: 16';
const doubles = '>RRL R>LL RR>L >RLL ; times: 8';
const twos = '>R>LR >L>RL R>L>R L>R>L ; times: 8';
const woodblock = { kind: 'woodblock', countInBeats: 4, throughout: true, bellEvery: 4, band: null } as const;
const one = (
  name: string,
  sheetText: string,
  bpm: number,
  change: Partial<TakeSpec> | (() => Partial<TakeSpec>) = {},
): CheckTake => ({ name, sheetText, bpm, change: typeof change === 'function' ? change : () => change });

/** Thresholds may be set on these … */
export const tuningTakes: readonly CheckTake[] = [
  one('rubber pad', round, 110),
  one('laminate pad, bedroom', hands, 120, { kind: 'laminate-pad', room: rooms[0]! }),
  one('mesh, living room, phone', doubles, 96, {
    kind: 'mesh',
    room: rooms[1]!,
    microphone: microphones.phone,
    noise: { colour: 'pink', levelDb: -60 },
  }),
  one('snare', twos, 100, { kind: 'snare' }),
  one('recorded snare, click', hands, 104, () => ({
    kind: recordedStrokes('snare'),
    click: { ...woodblock, levelDb: -22 },
  })),
];

/** … and are reported on these: other surfaces, rooms, exercises, tempos. */
export const reportTakes: readonly CheckTake[] = [
  one('soft pad, school', hands, 132, { kind: 'soft-pad', room: rooms[2]! }),
  one('rim, phone', round, 92, {
    kind: 'rim',
    microphone: microphones.phone,
    noise: { colour: 'room', levelDb: -58 },
  }),
  one('long wires', doubles, 88, { kind: 'long-wire-snare', room: rooms[0]! }),
  one('pillow, laptop', twos, 84, { kind: 'pillow', microphone: microphones.laptop }),
  one('high tom, bare room', round, 100, { kind: 'high-tom', room: rooms[3]! }),
  one('recorded middle tom', hands, 90, () => ({ kind: recordedStrokes('middle-tom') })),
  one('wires off, click, 44.1 kHz', round, 116, {
    kind: 'wires-off',
    sampleRate: 44100,
    click: { ...woodblock, kind: 'beep', levelDb: -24 },
  }),
];

/** A seed's performance of such a take. */
export function checkTakeSpec(take: CheckTake, seed: number): { sheet: Sheet; spec: TakeSpec } {
  const text = `tempo: ${take.bpm}\n${take.sheetText}`;
  const { sheet, slots } = readSheet(text);
  const spec = { ...plainTake, bpm: take.bpm, slots, seed, player: chainPlayer(seed), ...take.change() };
  return { sheet, spec };
}
