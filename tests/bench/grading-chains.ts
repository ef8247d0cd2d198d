import { microphones, plainMicrophone } from '../../fixtures/generator/microphone.ts';
import { type Player, practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import { plainTake } from '../../fixtures/generator/take-spec.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { memorySource } from './bench-take.ts';
import { throughCodec } from './codec.ts';
import type { RecordingChain } from './recording-chains.ts';

/** Ways of recording one and the same playing, the first of which the others are held against. */
export const gradingChains: readonly RecordingChain[] = [
  { name: 'clean', change: {} },
  { name: 'room', change: { room: rooms[1]! } },
  // Saturation takes 0.3 dB off an accent of −10 dBFS.
  { name: 'phone', change: { microphone: { ...microphones.phone, drive: 1 } } },
  { name: 'noise', change: { noise: { colour: 'pink', levelDb: -52 } } },
  {
    name: 'click',
    change: {
      click: { kind: 'woodblock', levelDb: -20, countInBeats: 4, throughout: true, bellEvery: 4, band: null },
    },
  },
  { name: '20 dB quieter', change: { microphone: { ...plainMicrophone, gainDb: -20 } } },
  { name: 'MP3, 64 kbit/s', change: {}, codec: { encoder: 'libmp3lame', container: 'mp3', kilobits: 64 } },
  { name: 'Opus, 24 kbit/s', change: {}, codec: { encoder: 'libopus', container: 'ogg', kilobits: 24 } },
];

const sheetText = 'tempo: 110\n>RLR >LRL R>LR L>RL RL>R LR>L ; times: 6';

/** Two players by turns: one with scatter alone, one with habits besides. */
export function chainPlayer(seed: number): Player {
  if (seed % 2 === 0) return practisedPlayer;
  const placementMs = [0, -7, 5];
  return { ...practisedPlayer, placementMs, handMs: 5, leftTapDb: -2, leakDb: 1.5, tempoChangePercent: 1.5 };
}

/** Renders the playing of a seed through a chain and grades it; null where the chain needs ffmpeg and there is none. */
export function gradedThrough(
  chain: RecordingChain,
  seed: number,
  ffmpeg: string | undefined,
): TakeResult | null {
  const { change, codec } = chain;
  if (codec !== undefined && ffmpeg === undefined) return null;
  const { sheet, slots } = readSheet(sheetText);
  const spec = { ...plainTake, bpm: 110, slots, seed, player: chainPlayer(seed), ...change };
  const { samples, sampleRate } = renderTake(spec);
  const heard = codec === undefined ? samples : throughCodec(ffmpeg!, samples, sampleRate, codec);
  return gradeTake(memorySource(heard, sampleRate), sheet, { name: chain.name });
}
