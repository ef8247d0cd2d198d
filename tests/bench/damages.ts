import { addHum } from '../../fixtures/generator/damage/add-hum.ts';
import { clip } from '../../fixtures/generator/damage/clip.ts';
import { type DropOutKind, dropOut } from '../../fixtures/generator/damage/drop-out.ts';
import { narrowBand } from '../../fixtures/generator/damage/narrow-band.ts';
import { addNoise, type NoiseColour } from '../../fixtures/generator/noise.ts';
import { seeded } from '../../fixtures/generator/random.ts';
import { codecDamages } from './codec-damages.ts';
import type { Damage } from './damage.ts';
import { processingDamages } from './processing-damages.ts';

const clipping = (name: string, ceiling: number): Damage => ({
  name,
  toldBy: ['clipped'],
  strengths: [0.5, 1, 2, 3, 6, 10].map((over) => ({
    label: `${over} dB over`,
    spoil: (samples) => clip(samples, over, ceiling),
  })),
});

const noise = (colour: NoiseColour): Damage => ({
  name: `${colour} noise`,
  toldBy: ['noisy', 'taps-near-noise'],
  strengths: [-60, -54, -48, -42, -36, -30].map((levelDb) => ({
    label: `${levelDb} dBFS`,
    spoil: (samples, sampleRate, seed) => {
      const out = Float64Array.from(samples);
      addNoise(out, colour, levelDb, sampleRate, seeded(`noise ${seed}`));
      return Float32Array.from(out);
    },
  })),
});

const hum = (hz: number, harmonics: number): Damage => ({
  name: `hum of ${hz} Hz, ${harmonics} overtones`,
  toldBy: ['hum'],
  strengths: [-66, -60, -54, -48, -42, -36].map((levelDb) => ({
    label: `${levelDb} dBFS`,
    spoil: (samples, sampleRate) => addHum(samples, sampleRate, { hz, levelDb, harmonics }),
  })),
});

const dropOuts = (kind: DropOutKind, toldBy: string): Damage => ({
  name: `drop-outs, ${kind}`,
  toldBy: [toldBy],
  strengths: [
    [3, 2],
    [10, 3],
    [20, 6],
    [40, 12],
    [80, 20],
  ].map(([ms, aMinute]) => ({
    label: `${ms} ms, ${aMinute} a minute`,
    spoil: (samples, sampleRate, seed) =>
      dropOut(samples, sampleRate, { kind, ms: ms!, aMinute: aMinute! }, seeded(`drop ${seed}`)).samples,
  })),
});

/** Every damage that the check of recordings is judged by. */
export const damages: readonly Damage[] = [
  clipping('clipping at full scale', 1),
  clipping('clipping below full scale', 0.7),
  {
    name: 'offset',
    toldBy: ['dc-offset'],
    strengths: [0.003, 0.01, 0.03, 0.1, 0.2].map((offset) => ({
      label: String(offset),
      spoil: (samples) => samples.map((x) => Math.min(1, Math.max(-1, x + offset))),
    })),
  },
  hum(50, 0),
  hum(50, 8),
  hum(60, 20),
  noise('white'),
  noise('pink'),
  noise('room'),
  dropOuts('silence', 'drop-outs'),
  dropOuts('lost', 'drop-outs'),
  dropOuts('repeated', 'drop-outs'),
  {
    name: 'narrow band',
    toldBy: ['narrow-band'],
    strengths: [
      [100, 7000],
      [200, 5000],
      [300, 3400],
      [400, 2400],
      [500, 1600],
    ].map(([lowHz, highHz]) => ({
      label: `${lowHz} to ${highHz} Hz`,
      spoil: (samples, sampleRate) => narrowBand(samples, sampleRate, { lowHz: lowHz!, highHz: highHz! }),
    })),
  },
  ...processingDamages,
  ...codecDamages,
  {
    name: 'click in the microphone',
    toldBy: ['click-loud'],
    strengths: [-20, -14, -8, -3, 0].map((levelDb) => ({
      label: `${levelDb} dBFS`,
      spec: () => ({
        click: {
          kind: 'woodblock' as const,
          levelDb,
          countInBeats: 4,
          throughout: true,
          bellEvery: 4,
          band: null,
        },
      }),
    })),
  },
];
