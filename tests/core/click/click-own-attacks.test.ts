import { describe, expect, it } from 'vitest';
import { clickSound } from '../../../fixtures/generator/click-sound.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { strokeKinds } from '../../../fixtures/generator/stroke-kinds.ts';
import { synthesiseStroke } from '../../../fixtures/generator/stroke-sound.ts';
import { withoutOwnAttacks } from '../../../src/core/click/click-own-attacks.ts';
import { hearStrokes } from '../../../src/core/onsets/hear-strokes.ts';
import { checkTakeSpec, reportTakes } from '../../bench/check-takes.ts';
import { floatSource } from '../../support/float-source.ts';
import { whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
const onsets = [0.2, 0.7, 1.2, 1.7, 2.2, 2.7];

/** Clicks of a beep of 30 ms, and strokes of one hand so many seconds after each. */
function recording(delays: readonly number[]) {
  const samples = whiteNoise(3.4 * rate, 0.0002, 1);
  const add = (sound: ArrayLike<number>, time: number) => {
    const from = Math.round(time * rate);
    for (let n = 0; n < sound.length; n++) samples[from + n]! += sound[n]!;
  };
  for (const onset of onsets) add(clickSound('beep', false, -20, 0, rate).samples, onset);
  delays.forEach((delay, k) => {
    const request = { sampleRate: rate, fraction: 0, levelDb: -14, softDb: 0, tiltDb: 0, random: seeded(k) };
    add(synthesiseStroke(strokeKinds['rubber-pad'], request).samples, onsets[k]! + delay);
  });
  return floatSource(rate, samples);
}

describe('attacks that are the clicks’ own', () => {
  const end = (onset: number) => ({ time: onset + 0.027, levelDb: -28 });

  it('are ends of a tone, which follow every click by the same time', () => {
    const attacks = onsets.flatMap((onset) => [{ time: onset, levelDb: -20 }, end(onset)]);
    const left = withoutOwnAttacks(recording([]), onsets, attacks);
    expect(left.map(({ time }) => time)).toEqual(onsets);
  });

  it('are no strokes, which scatter', () => {
    const delays = [0.15, 0.153, 0.148, 0.1515, 0.1562, 0.1449];
    const attacks = onsets.flatMap((onset, k) => [
      { time: onset, levelDb: -20 },
      { time: onset + delays[k]!, levelDb: -14 },
    ]);
    expect(withoutOwnAttacks(recording(delays), onsets, attacks)).toEqual(attacks);
  });

  it('are no strokes, whose sounds differ, though chance put them to the same time', () => {
    const delays = onsets.map(() => 0.15);
    const attacks = onsets.flatMap((onset) => [
      { time: onset, levelDb: -20 },
      { time: onset + 0.15, levelDb: -14 },
    ]);
    expect(withoutOwnAttacks(recording(delays), onsets, attacks)).toEqual(attacks);
  });
});

it.each([8101, 8102])('a beep that breaks off leaves no strokes behind, and takes none (seed %i)', (seed) => {
  const take = reportTakes.find(({ name }) => name.includes('wires off, click'))!;
  const { samples, sampleRate, truth } = renderTake(checkTakeSpec(take, seed).spec);
  const { sounds } = hearStrokes(floatSource(sampleRate, samples));
  const heard = sounds.filter(({ sound }) => sound === 'pad').map(({ time }) => time);
  expect(heard).toHaveLength(truth.strokes.length);
  for (const [i, { time }] of truth.strokes.entries()) expect(Math.abs(heard[i]! - time)).toBeLessThan(0.001);
  const clicks = sounds.filter(({ sound }) => sound === 'click').map(({ time }) => time);
  // The last ones sound over the ringing of a drum.
  expect(clicks).toHaveLength(truth.clicks.length);
  expect(sounds.filter(({ sound }) => sound === 'stick-click')).toEqual([]);
});
