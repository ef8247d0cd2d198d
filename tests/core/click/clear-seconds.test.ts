import fc from 'fast-check';
import { expect, it } from 'vitest';
import { clearSeconds } from '../../../src/core/click/clear-seconds.ts';

const at = (time: number, levelDb = -20) => ({ time, levelDb });

it('lasts to just before the next attack', () => {
  expect(clearSeconds(1, [at(1), at(1.4)], 60)).toBeCloseTo(0.3985, 12);
  expect(clearSeconds(1, [at(0.5), at(1), at(1.4)], 60)).toBeCloseTo(0.3985, 12);
});

it('lasts to the end where nothing follows', () => {
  expect(clearSeconds(1, [at(1)], 3)).toBeCloseTo(1.9985, 12);
});

it("passes over what may be the room's answer", () => {
  expect(clearSeconds(1, [at(1), at(1.03, -45), at(1.4)], 60)).toBeCloseTo(0.3985, 12);
});

it.each([
  ['nothing was heard there', [at(0.7), at(1.4)]],
  ['something was struck together with it', [at(1), at(1.01)]],
  ['something was struck just before it', [at(0.95), at(1)]],
])('is nothing where %s', (_, attacks) => {
  expect(clearSeconds(1, attacks, 60)).toBe(0);
});

it('says what a look at every attack says', () => {
  const attack = fc.record({
    time: fc.double({ min: 0, max: 3, noNaN: true }),
    levelDb: fc.integer({ min: -60, max: -5 }),
  });
  fc.assert(
    fc.property(fc.array(attack, { maxLength: 30 }), fc.nat(29), (unsorted, chosen) => {
      const attacks = unsorted.toSorted((a, b) => a.time - b.time);
      const onset = attacks[chosen % Math.max(1, attacks.length)]?.time ?? 1;
      const own = attacks.find(({ time }) => Math.abs(time - onset) < 0.0005);
      const others = attacks.filter(
        (other) => other !== own && other.time > onset - 0.1 && other.levelDb > own!.levelDb - 20,
      );
      const next = others[0]?.time ?? 3;
      const expected = own === undefined || next < onset + 0.012 ? 0 : next - onset - 0.0015;
      expect(clearSeconds(onset, attacks, 3)).toBeCloseTo(expected, 12);
    }),
  );
});
