import { describe, expect, it } from 'vitest';
import type { ScenarioName } from '../../../fixtures/generator/scenarios.ts';
import { roomSound } from '../../../src/core/onsets/room-sound.ts';
import { floatSource } from '../../support/float-source.ts';
import { heardScenario } from '../../support/heard-scenario.ts';
import { heardSound } from '../../support/heard-sound.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
/** Strokes every 0.2 s, each a short sound followed by this one, seconds after it. */
function strokesWith(after: (seconds: number, n: number) => number) {
  const noise = whiteNoise(rate, 1, 9);
  const samples = Float32Array.from({ length: rate }, (_, n) => {
    const since = ((n - 4800) % 9600) / rate;
    if (n < 4800) return 0;
    return 0.3 * Math.exp(-since / 0.002) * noise[n]! + after(since, n);
  });
  const sounds = Array.from({ length: 4 }, (_, i) => heardSound(0.1 + 0.2 * i));
  return { source: floatSource(rate, samples), sounds };
}

describe('roomSound', () => {
  it('finds a few vibrations predictable and a dense tail not', () => {
    const drum = strokesWith((t) => 0.2 * Math.exp(-t / 0.05) * Math.sin(2 * Math.PI * 330 * t));
    const tail = whiteNoise(rate, 1, 4);
    const room = strokesWith((t, n) => 0.2 * Math.exp(-t / 0.05) * tail[n]!);
    expect(roomSound(drum.source, drum.sounds)!.predictedDb).toBeGreaterThan(20);
    expect(roomSound(room.source, room.sounds)!.predictedDb).toBeLessThan(10);
  });

  it('weighs the first four milliseconds against the next eight', () => {
    const swell = strokesWith((t, n) => (t > 0.004 && t < 0.012 ? 0.8 * Math.sin(0.1 * n) : 0));
    const dry = strokesWith(() => 0);
    expect(roomSound(swell.source, swell.sounds)!.directDb).toBeLessThan(-6);
    expect(roomSound(dry.source, dry.sounds)!.directDb).toBeGreaterThan(6);
  });

  it('knows nothing where no stroke stands alone', () => {
    const { source } = strokesWith(() => 0);
    expect(roomSound(source, [])).toBeNull();
    const crowded = Array.from({ length: 9 }, (_, i) => heardSound(0.1 + 0.05 * i));
    expect(roomSound(source, crowded.concat(heardSound(0.5, { sound: 'click' })))).toBeNull();
  });
});

describe('standard errors of levels', () => {
  it.each<ScenarioName>(['snare', 'mesh', 'soft-pad'])('know a %s, that rings, from a room', (name) => {
    const errors = heardScenario(name, 7704).pads.map(({ levelSe }) => levelSe);
    expect(errors.sort((a, b) => a - b)[errors.length >> 1]).toBeLessThan(0.1);
  });

  it.each<ScenarioName>(['room-bedroom', 'room-living', 'room-far'])('know %s', (name) => {
    const errors = heardScenario(name, 7704).pads.map(({ levelSe }) => levelSe);
    expect(Math.min(...errors)).toBeGreaterThan(0.25);
  });
});
