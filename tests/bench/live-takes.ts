import { microphones } from '../../fixtures/generator/microphone.ts';
import { practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';
import { takesOf } from './bench-takes.ts';

const click = {
  kind: 'woodblock',
  levelDb: -24,
  countInBeats: 4,
  throughout: true,
  bellEvery: 4,
  band: null,
} as const;
const bedroom = { room: rooms[0]! };

/** Ways from the stick to the page. */
const chains: readonly { readonly name: string; readonly change: Partial<TakeSpec> }[] = [
  { name: 'pad', change: {} },
  { name: 'pad in a bedroom', change: bedroom },
  { name: 'ringing snare', change: { kind: 'snare' } },
  { name: 'snare with long wires', change: { kind: 'long-wire-snare' } },
  { name: 'pad, phone in a bedroom', change: { microphone: microphones.phone, ...bedroom } },
  { name: 'snare, phone in a bedroom', change: { kind: 'snare', microphone: microphones.phone, ...bedroom } },
  { name: 'pad, gain control', change: { microphone: microphones['gain-control'] } },
  { name: 'pad, noise', change: { noise: { colour: 'room', levelDb: -48 } } },
  { name: 'pad with a click in the bedroom', change: { click, ...bedroom } },
];

/** A take of about half a minute. */
function liveTake(change: Partial<TakeSpec>, seed: number) {
  const bpm = 100 + 17 * (seed % 4);
  const { slots } = readSheet(`tempo: ${bpm}\n>RLR >LRL R>LR L>RL RL>R LR>L >R>LR >L>RL ; times: 7\n`);
  return renderTake({ ...plainTake, player: practisedPlayer, bpm, slots, seed, ...change });
}

export interface LiveTake {
  readonly kind: string;
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

/** Takes of one seed: a practised player through all of those chains, and every scenario by its group. */
export function* liveTakes(seed: number): Generator<LiveTake> {
  for (const { name, change } of chains) {
    const { samples, sampleRate } = liveTake(change, seed);
    yield { kind: name, samples, sampleRate };
  }
  for (const { group, samples, sampleRate } of takesOf(seed, undefined))
    yield { kind: `scenarios: ${group}`, samples, sampleRate };
}
