import { addHum } from '../../fixtures/generator/damage/add-hum.ts';
import { clip } from '../../fixtures/generator/damage/clip.ts';
import { type DropOutKind, dropOut } from '../../fixtures/generator/damage/drop-out.ts';
import { narrowBand } from '../../fixtures/generator/damage/narrow-band.ts';
import { suppressNoise } from '../../fixtures/generator/damage/suppress-noise.ts';
import { throughChain } from '../../fixtures/generator/damage/through-chain.ts';
import { addNoise, type NoiseColour } from '../../fixtures/generator/noise.ts';
import { seeded } from '../../fixtures/generator/random.ts';
import type { TakeSpec } from '../../fixtures/generator/take-spec.ts';
import { programPath } from '../programs.ts';
import { type Codec, throughCodec } from './codec.ts';

/** A finished recording spoilt; another seed is other chance. */
export type Spoil = (samples: Float32Array, sampleRate: number, seed: number) => Float32Array;

/** One way to damage a recording at strengths that grow. */
export interface Damage {
  readonly name: string;
  /** Codes of findings that tell it. */
  readonly toldBy: readonly string[];
  readonly strengths: readonly {
    readonly label: string;
    /** What is changed before the recording is rendered, or the finished recording. */
    readonly spec?: (spec: TakeSpec) => Partial<TakeSpec>;
    readonly spoil?: Spoil;
  }[];
}

const ffmpeg = programPath('ffmpeg');

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

const codec = (
  name: string,
  encoder: Codec['encoder'],
  container: Codec['container'],
  rates: number[],
): Damage[] =>
  ffmpeg === undefined
    ? []
    : [
        {
          name,
          toldBy: ['lossy-codec', 'spectral-holes', 'narrow-band'],
          strengths: rates.map((kilobits) => ({
            label: `${kilobits} kbit/s`,
            spoil: (samples, sampleRate) =>
              throughCodec(ffmpeg, samples, sampleRate, { encoder, container, kilobits }),
          })),
        },
      ];

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
  {
    name: 'gain control',
    toldBy: ['gain-control'],
    strengths: [1.2, 1.5, 2, 4, 10].map((ratio) => ({
      label: `ratio ${ratio}`,
      spoil: (samples, sampleRate, seed) =>
        throughChain(
          samples,
          sampleRate,
          { gainControl: { thresholdDb: -34, ratio, attackMs: 4, releaseMs: 260, makeUpDb: 4 } },
          seeded(`gain ${seed}`),
        ),
    })),
  },
  {
    name: 'limiter',
    toldBy: ['limited', 'gain-control'],
    strengths: [-16, -20, -24, -30].map((thresholdDb) => ({
      label: `from ${thresholdDb} dBFS`,
      spoil: (samples, sampleRate, seed) =>
        throughChain(
          samples,
          sampleRate,
          { gainControl: { thresholdDb, ratio: 20, attackMs: 0.5, releaseMs: 80, makeUpDb: 4 } },
          seeded(`limit ${seed}`),
        ),
    })),
  },
  {
    name: 'slow gain control',
    toldBy: ['gain-control'],
    strengths: [1.5, 2, 4].map((ratio) => ({
      label: `ratio ${ratio}`,
      spoil: (samples, sampleRate, seed) =>
        throughChain(
          samples,
          sampleRate,
          { gainControl: { thresholdDb: -44, ratio, attackMs: 60, releaseMs: 1500, makeUpDb: 4 } },
          seeded(`slow ${seed}`),
        ),
    })),
  },
  {
    name: 'gate',
    toldBy: ['gated'],
    strengths: [-50, -44, -38, -32, -28].map((thresholdDb) => ({
      label: `opens at ${thresholdDb} dBFS`,
      spoil: (samples, sampleRate, seed) =>
        throughChain(
          samples,
          sampleRate,
          { gate: { thresholdDb, floorDb: -45, attackMs: 1.5, holdMs: 40, releaseMs: 60 } },
          seeded(`gate ${seed}`),
        ),
    })),
  },
  {
    name: 'gate that closes fast',
    toldBy: ['gated'],
    strengths: [-50, -38, -28].map((thresholdDb) => ({
      label: `opens at ${thresholdDb} dBFS`,
      spoil: (samples, sampleRate, seed) =>
        throughChain(
          samples,
          sampleRate,
          { gate: { thresholdDb, floorDb: -25, attackMs: 1, holdMs: 30, releaseMs: 6 } },
          seeded(`fast gate ${seed}`),
        ),
    })),
  },
  {
    name: 'noise suppression',
    toldBy: ['spectral-holes', 'lossy-codec', 'gated'],
    strengths: [
      [8, 6, 5],
      [12, 9, 20],
      [20, 12, 40],
      [30, 18, 60],
    ].map(([depthDb, marginDb, openMs]) => ({
      label: `${depthDb} dB, margin ${marginDb}, opens in ${openMs} ms`,
      spoil: (samples, sampleRate) =>
        suppressNoise(samples, sampleRate, { depthDb: depthDb!, marginDb: marginDb!, openMs: openMs! }),
    })),
  },
  ...codec('MP3', 'libmp3lame', 'mp3', [128, 64, 32, 16]),
  ...codec('AAC', 'aac', 'adts', [96, 64, 32, 16]),
  ...codec('Opus', 'libopus', 'ogg', [48, 24, 12, 6]),
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
