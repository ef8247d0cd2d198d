import { describe, expect, it } from 'vitest';
import { addNoise } from '../../../../fixtures/generator/noise.ts';
import { seeded } from '../../../../fixtures/generator/random.ts';
import { judgeRoom } from '../../../../src/page/recording/meter/judge-room.ts';

const rate = 48000;
const noise = (levelDb: number, seconds = 2) => {
  const out = new Float64Array(seconds * rate);
  addNoise(out, 'white', levelDb, rate, seeded(2));
  return Float32Array.from(out);
};

describe('judgeRoom', () => {
  it('measures the noise between sounds, whatever sounds', () => {
    const samples = noise(-60);
    expect(judgeRoom(samples, rate).noiseDb).toBeCloseTo(-60, 0);
    for (let n = 0; n < 0.8 * rate; n++) samples[n + 20000]! += 0.5 * Math.sin(n * 0.3);
    const room = judgeRoom(samples, rate);
    expect(room.verdict).toBe('quiet');
    expect(room.noiseDb).toBeCloseTo(-60, 0);
  });

  it('finds a place noisy, a microphone silent, and a moment too short', () => {
    expect(judgeRoom(noise(-40), rate).verdict).toBe('noisy');
    expect(judgeRoom(new Float32Array(96000), rate)).toEqual({ verdict: 'silent', noiseDb: -Infinity });
    expect(judgeRoom(noise(-60, 0.3), rate).verdict).toBe('too-short');
  });

  it("doesn't take a steady offset for noise", () => {
    expect(
      judgeRoom(
        noise(-60).map((x) => x + 0.1),
        rate,
      ).noiseDb,
    ).toBeCloseTo(-60, 0);
  });
});
