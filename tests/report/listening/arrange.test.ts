import { describe, expect, it } from 'vitest';
import { arrange, leadTime, type Wish } from '../../../src/report/listening/arrange.ts';
import { listeningTake } from '../../../src/report/listening/listening-take.ts';
import { mixPieces } from '../../../src/report/listening/mix-pieces.ts';
import { sameLoudness, tapsLoweredDb } from '../../../src/report/listening/same-loudness.ts';
import { smallTake } from '../../charts/small-take.ts';
import { pulseSound, sineSound } from './sine-sound.ts';

const result = smallTake(6);
const duration = 7;
const take = listeningTake({ ...result, recording: { ...result.recording, duration } });
const whole: Wish = { version: 'as-played', halfSpeed: false, from: 0, to: duration, goesRound: false };
const { time, tap } = take.strokes;
const pulses = pulseSound(
  duration,
  time.map((t, i) => ({ time: t, height: tap[i] ? 0.25 : 1 })),
);

/** Where the pulses of an arrangement are heard, s, and how high. */
function heard(wish: Wish, seconds = 16): { at: number; height: number }[] {
  const mix = mixPieces(pulses, arrange(take, wish), 0, seconds * pulses.sampleRate);
  return [...mix].flatMap((height, i) => (height > 0.001 ? [{ at: i / pulses.sampleRate, height }] : []));
}
const within = { sample: 1.01 / pulses.sampleRate };
function expectTimes(found: readonly { at: number }[], wanted: readonly number[]): void {
  expect(found).toHaveLength(wanted.length);
  found.forEach(({ at }, i) => {
    expect(Math.abs(at - wanted[i]!), `stroke ${i}`).toBeLessThan(within.sample);
  });
}

describe('arrange', () => {
  it.each([8000, 11025, 44100])(
    'gives the recording back sample by sample as it was played, at %i Hz',
    (rate) => {
      const sound = sineSound(duration, rate);
      const loudness = sameLoudness(take.strokes);
      const lead = Math.round(leadTime * rate);
      const mix = mixPieces(sound, arrange(take, whole), lead, sound.samples.length - lead);
      const comingIn = 0.005 * rate;
      const worst = mix.reduce(
        (most, s, i) => (i < comingIn ? most : Math.max(most, Math.abs(s - loudness * sound.samples[i]!))),
        0,
      );
      expect(worst).toBeLessThan(1e-6);
    },
  );

  it('puts every stroke on its even place, each once', () => {
    const even = time.map((_, i) => leadTime + 1 + 0.2 * i);
    expectTimes(heard({ ...whole, version: 'even' }), even);
  });

  it('sets strokes twice as far apart at half speed, and leaves each as it was', () => {
    const wish = { ...whole, halfSpeed: true };
    expectTimes(
      heard(wish),
      time.map((t) => leadTime + 2 * t),
    );
    // After a stroke the sound goes on at its own speed: a sine keeps its pitch.
    const sound = sineSound(duration);
    const at = Math.round((leadTime + 2 * time[4]! + 0.05) * sound.sampleRate);
    const mix = mixPieces(sound, arrange(take, wish), at, 800);
    const crossings = mix.reduce((n, s, i) => n + (i > 0 && s >= 0 && mix[i - 1]! < 0 ? 1 : 0), 0);
    expect(crossings).toBe(5);
  });

  it('lowers the taps alone, and the take as played to the same power', () => {
    const [played, lowered] = (['as-played', 'taps-lowered'] as const).map((version) =>
      heard({ ...whole, version }),
    );
    const gain = 10 ** (-tapsLoweredDb / 20);
    const heights = lowered!.map(({ height }) => height);
    expect(heights).toEqual(tap.map((isTap) => expect.closeTo(isTap ? 0.25 * gain : 1, 6)));
    expectTimes(
      lowered!,
      played!.map(({ at }) => at),
    );
    // Levels of the small take: accents 12 and 10 dB over its two taps.
    const power = (taps: number) => 1 + taps ** 2 * (10 ** -1.2 + 10 ** -1);
    expect(played![0]!.height ** 2).toBeCloseTo(power(gain) / power(1), 6);
  });

  it('goes round a beat in time, with the strokes that belong to it and no others', () => {
    const wish = { ...whole, from: 1.6, to: 2.2, goesRound: true };
    const one = [1.6, 1.794, 2.004];
    const rounds = [0, 1, 2, 3].flatMap((round) => one.map((t) => leadTime + t - 1.6 + 0.6 * round));
    expectTimes(heard(wish, 2.45), rounds);
    const even = [0, 1, 2, 3].flatMap((round) => [1.6, 1.8, 2].map((t) => leadTime + t - 1.6 + 0.6 * round));
    expectTimes(heard({ ...wish, version: 'even' }, 2.45), even);
    const slow = [0, 1].flatMap((round) => one.map((t) => leadTime + 2 * (t - 1.6) + 1.2 * round));
    expectTimes(heard({ ...wish, halfSpeed: true }, 2.45), slow);
  });

  it('never jumps, however pieces are moved', () => {
    const sound = sineSound(duration);
    // The steepest a full-scale 50 Hz sine gets from sample to sample, and what a fade of 4 ms adds to it.
    const steepest = (2 * Math.PI * 50) / sound.sampleRate + 2 / (0.004 * sound.sampleRate);
    for (const version of ['as-played', 'even', 'taps-lowered'] as const) {
      for (const halfSpeed of [false, true]) {
        for (const goesRound of [false, true]) {
          const part = goesRound ? { from: 1.6, to: 2.2 } : {};
          const plan = arrange(take, { ...whole, version, halfSpeed, goesRound, ...part });
          const mix = mixPieces(sound, plan, 400, 5 * sound.sampleRate);
          let jump = 0;
          for (let i = 1; i < mix.length; i++) jump = Math.max(jump, Math.abs(mix[i]! - mix[i - 1]!));
          expect(jump, `${version} ${halfSpeed} ${goesRound}`).toBeLessThan(steepest);
        }
      }
    }
  });

  it('puts clicks on the even beats, strong where a bar begins', () => {
    const { clicks } = arrange(take, { ...whole, halfSpeed: true });
    expect(clicks.map(({ at }) => at)).toEqual(
      [0, 1, 2, 3, 4, 5].map((beat) => expect.closeTo(leadTime + 2 * (1 + 0.6 * beat), 9)),
    );
    expect(clicks.map(({ strong }) => strong)).toEqual([true, false, false, false, true, false]);
  });

  it('can play a take without strokes', () => {
    const none = { ...take, strokes: { time: [], moveMs: [], tap: [], levelDb: [] } };
    expect(arrange(none, whole).pieces).toEqual([
      { from: 0, to: duration, at: leadTime, gain: 1, fadeIn: 0.004, fadeOut: 0.004 },
    ]);
  });
});
