import { microphones, plainMicrophone } from '../../fixtures/generator/microphone.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import type { TakeSpec } from '../../fixtures/generator/take-spec.ts';
import type { Codec } from './codec.ts';

/** A way from the stick to the file. */
export interface RecordingChain {
  readonly name: string;
  readonly change: Partial<TakeSpec>;
  readonly codec?: Codec;
}

const inBedroom = { room: rooms[0]! };

/** What the same playing goes through. The last two change levels by themselves. */
export const recordingChains: readonly RecordingChain[] = [
  { name: 'clean', change: {} },
  ...['bedroom', 'living room', 'school', 'bare room', 'far away', 'hall'].map((name, i) => ({
    name,
    change: { room: rooms[i]! },
  })),
  { name: 'snare', change: { kind: 'snare' } },
  { name: 'long wires', change: { kind: 'long-wire-snare' } },
  { name: '12 dB quieter', change: { microphone: { ...plainMicrophone, gainDb: -12 } } },
  { name: 'noise', change: { noise: { colour: 'room', levelDb: -48 } } },
  { name: 'phone', change: { microphone: microphones.phone, ...inBedroom } },
  { name: 'laptop', change: { microphone: microphones.laptop, room: rooms[1]! } },
  {
    name: 'messenger, 16 kHz',
    change: { sampleRate: 16000, microphone: microphones.messenger, ...inBedroom },
  },
  { name: 'MP3, 64 kbit/s', change: {}, codec: { encoder: 'libmp3lame', container: 'mp3', kilobits: 64 } },
  { name: 'AAC, 64 kbit/s', change: {}, codec: { encoder: 'aac', container: 'adts', kilobits: 64 } },
  { name: 'Opus, 24 kbit/s', change: {}, codec: { encoder: 'libopus', container: 'ogg', kilobits: 24 } },
  { name: 'gain control', change: { microphone: microphones['gain-control'] } },
  { name: 'clipping', change: { microphone: microphones.clipping } },
];
