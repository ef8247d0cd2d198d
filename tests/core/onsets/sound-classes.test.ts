import { describe, expect, it } from 'vitest';
import { attacksOf } from '../../../src/core/onsets/attack-search.ts';
import { fewestSounds } from '../../../src/core/onsets/pad-sound.ts';
import { classifySounds } from '../../../src/core/onsets/sound-classes.ts';
import { floatSource } from '../../support/float-source.ts';
import { heardScenario, pooled } from '../../support/heard-scenario.ts';
import { heardSound } from '../../support/heard-sound.ts';
import { strokesInNoise } from '../../support/made-strokes.ts';

const seeds = [7601, 7602, 7603, 7604, 7605, 7606];

describe.each(['talk-and-noodling-first', 'stick-count-in', 'busy-room'] as const)('in %s', (name) => {
  it("the pad's strokes are told from everything else, over six performances", () => {
    const { recall, precision } = pooled(seeds.map((seed) => heardScenario(name, seed)));
    expect(recall).toBeGreaterThanOrEqual(0.998);
    expect(precision).toBeGreaterThanOrEqual(0.97);
  });
});

/** Classes of what is found at the starts of other sounds of a kind. */
function classesOf(name: 'talk-and-noodling-first' | 'stick-count-in' | 'busy-room', kind: string): string[] {
  return seeds.flatMap((seed) => {
    const { truth, hearing } = heardScenario(name, seed);
    return truth.otherSounds
      .filter((other) => other.kind === kind)
      .flatMap(({ time }) => hearing.sounds.find((sound) => Math.abs(sound.time - time) < 0.012) ?? [])
      .map(({ sound }) => sound);
  });
}

const share = (classes: readonly string[], wanted: readonly string[]) =>
  classes.filter((sound) => wanted.includes(sound)).length / classes.length;

describe('what is no stroke', () => {
  it('a count-in with the sticks is known for one', () => {
    const sticks = classesOf('stick-count-in', 'stick-click');
    expect(sticks).toHaveLength(4 * seeds.length);
    expect(share(sticks, ['stick-click'])).toBe(1);
  });

  it('talk is never the pad, and mostly a voice or its consonants', () => {
    const talk = [...classesOf('talk-and-noodling-first', 'talk'), ...classesOf('busy-room', 'talk')];
    expect(talk.length).toBeGreaterThan(40);
    expect(share(talk, ['pad'])).toBeLessThan(0.03);
    expect(share(talk, ['voice'])).toBeGreaterThan(0.3);
  });

  it('sticks laid down and coughs are other sounds', () => {
    const laid = [
      ...classesOf('talk-and-noodling-first', 'sticks-laid-down'),
      ...classesOf('busy-room', 'sticks-laid-down'),
    ];
    expect(laid.length).toBeGreaterThan(60);
    expect(share(laid, ['pad'])).toBeLessThan(0.06);
    expect(share(classesOf('busy-room', 'cough'), ['pad'])).toBe(0);
  });
});

describe('classifySounds', () => {
  const rate = 48_000;
  const made = Array.from({ length: 24 }, (_, i) => ({
    time: 0.4 + 0.15 * i,
    levelDb: i % 3 === 0 ? -10 : -26,
    softDb: i % 3 === 0 ? 0 : 16,
    seed: i,
  }));
  const source = floatSource(rate, strokesInNoise(4.5, rate, made));
  const attacks = attacksOf(source).attacks;

  it('takes a plain take whole, changing nothing but classes', () => {
    const sounds = classifySounds(source, attacks);
    expect(sounds).toHaveLength(24);
    expect(sounds.every(({ sound }) => sound === 'pad')).toBe(true);
    expect(sounds).toEqual(attacks.map((stroke) => ({ ...stroke, sound: 'pad' })));
  });

  it('gives the same classes for the same sounds', () => {
    expect(classifySounds(source, attacks)).toEqual(classifySounds(source, attacks));
  });

  it('takes all for strokes when there are too few to know a pad', () => {
    const few = attacks.slice(0, fewestSounds - 1);
    expect(classifySounds(source, few)).toEqual(few);
    expect(classifySounds(source, [])).toEqual([]);
  });

  it('leaves clicks what they are', () => {
    const click = heardSound(0.3, { sound: 'click' });
    expect(classifySounds(source, [click, ...attacks])[0]).toEqual(click);
  });

  it('takes a stroke on another surface for another sound', () => {
    const rim = { time: 4.2, levelDb: -12, kind: 'rim', seed: 99 } as const;
    const mixed = floatSource(rate, strokesInNoise(4.8, rate, [...made, rim]));
    const sounds = classifySounds(mixed, attacksOf(mixed).attacks);
    expect(sounds.at(-1)!.time).toBeCloseTo(4.2, 3);
    expect(sounds.at(-1)!.sound).not.toBe('pad');
    expect(sounds.filter(({ sound }) => sound === 'pad')).toHaveLength(24);
  });
});
