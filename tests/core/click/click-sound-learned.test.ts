import { describe, expect, it } from 'vitest';
import { clickSound } from '../../../fixtures/generator/click-sound.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { strokeKinds } from '../../../fixtures/generator/stroke-kinds.ts';
import { synthesiseStroke } from '../../../fixtures/generator/stroke-sound.ts';
import { learnClickSound, type Occurrence } from '../../../src/core/click/click-sound-learned.ts';
import type { Source } from '../../../src/core/signal/source.ts';
import { floatSource } from '../../support/float-source.ts';
import { power, toDb, whiteNoise } from '../../support/signals.ts';

const rate = 48_000;
const length = 4800;
const period = 0.5;
const model = Float32Array.from(
  { length },
  (_, n) => clickSound('woodblock', false, -20, 0, rate).samples[n] ?? 0,
);

function mix(into: Float32Array, sound: ArrayLike<number>, from: number) {
  for (let n = 0; n < sound.length; n++) into[from + n]! += sound[n]!;
}

/** `count` clicks half a second apart in noise, and strokes so many seconds after those of `struck`. */
function recording(count: number, noise: number, struck: ReadonlyMap<number, number> = new Map()): Source {
  const samples = whiteNoise((count + 1) * period * rate, noise, 1);
  for (let k = 0; k < count; k++) {
    const from = Math.round((0.2 + k * period) * rate);
    mix(samples, model, from);
    const after = struck.get(k);
    if (after === undefined) continue;
    const request = { sampleRate: rate, fraction: 0, levelDb: -8, softDb: 0, tiltDb: 0, random: seeded(k) };
    mix(
      samples,
      synthesiseStroke(strokeKinds['rubber-pad'], request).samples,
      from + Math.round(after * rate),
    );
  }
  return floatSource(rate, samples);
}

const places = (count: number, clear: (k: number) => number): Occurrence[] =>
  Array.from({ length: count }, (_, k) => ({ start: 0.2 + k * period, clear: clear(k) }));

/** What the sound learned leaves of the click, dB. */
const missedDb = (sound: Float32Array) =>
  toDb(power(sound.map((value, n) => value - model[n]!)) / power(model));

describe('learnClickSound', () => {
  it('is the mean of clicks heard alone: noise falls with their number', () => {
    const few = missedDb(
      learnClickSound(
        recording(2, 0.001),
        places(2, () => period),
        length,
      ),
    );
    const many = missedDb(
      learnClickSound(
        recording(16, 0.001),
        places(16, () => period),
        length,
      ),
    );
    expect(few).toBeLessThan(-20);
    expect(many).toBeLessThan(few - 5);
    expect(many).toBeLessThan(-30);
  });

  it('keeps strokes out, though most clicks are struck', () => {
    const struck = new Map([0, 1, 2, 4, 5, 7, 8, 9, 10, 11].map((k) => [k, 0.002 + 0.004 * k]));
    const known = learnClickSound(
      recording(12, 0.0003, struck),
      places(12, (k) => struck.get(k) ?? period),
      length,
    );
    expect(missedDb(known)).toBeLessThan(-30);
  });

  it('keeps a stroke out even where nobody told it that there is one', () => {
    const known = learnClickSound(
      recording(9, 0.0003, new Map([[4, 0.001]])),
      places(9, () => period),
      length,
    );
    expect(missedDb(known)).toBeLessThan(-30);
  });

  it('makes do with clicks of which none is heard alone', () => {
    const struck = new Map(Array.from({ length: 10 }, (_, k) => [k, 0.03 + 0.002 * k]));
    const known = learnClickSound(
      recording(10, 0.0003, struck),
      places(10, (k) => struck.get(k)!),
      length,
    );
    const start = Math.round(0.029 * rate);
    const missed = known.slice(0, start).map((value, n) => value - model[n]!);
    expect(toDb(power(missed) / power(model, 0, start))).toBeLessThan(-25);
    // The strokes are 12 dB above the click: of their power next to nothing may have got in.
    const stroke = power(recording(1, 0, new Map([[0, 0.03]])).read(0, 0, rate), 0.22 * rate, 0.26 * rate);
    expect(toDb(power(known, start, start + 0.04 * rate) / stroke)).toBeLessThan(-10);
  });

  it('ends when only noise is left, without a step', () => {
    const known = learnClickSound(
      recording(8, 0.001),
      places(8, () => period),
      19_200,
    );
    expect(known).toHaveLength(19_200);
    expect(toDb(power(known, 9600) / power(model))).toBeLessThan(-30);
    expect(Math.abs(known.at(-1)!)).toBeLessThan(1e-4);
  });
});
