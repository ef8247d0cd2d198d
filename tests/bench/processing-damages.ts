import { suppressNoise } from '../../fixtures/generator/damage/suppress-noise.ts';
import { throughChain } from '../../fixtures/generator/damage/through-chain.ts';
import { seeded } from '../../fixtures/generator/random.ts';
import type { Damage } from './damage.ts';

/** What a device does of itself to a recording: gain control, limiters, gates, noise suppression. */
export const processingDamages: readonly Damage[] = [
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
];
