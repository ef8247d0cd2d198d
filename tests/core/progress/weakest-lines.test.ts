import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { standingWords, weakWords } from '../../../src/core/progress/weak-line-words.ts';
import { type PlayedLine, weakestLines } from '../../../src/core/progress/weakest-lines.ts';

const about = (value: number, half: number) => ({ value, low: value - half, high: value + half });

const played = (label: string, figures: PlayedLine['figures'], setUp = 'gum pad'): PlayedLine => ({
  exerciseId: label,
  label,
  takeId: 't',
  place: 0,
  day: '2026-03-09',
  bpm: 92,
  setUp,
  figures,
});
const uneven = (label: string, spread: number, half = 0.5) =>
  played(label, { 'timing-spread-share': about(spread, half) });
const found = (lines: readonly PlayedLine[]) =>
  weakestLines(lines, 2).map(({ label, measure, apart }) => [label, measure, apart]);

describe('the weakest lines', () => {
  it('are those least likely as good as the others, whichever figure tells it', () => {
    const fine = { 'timing-spread-share': about(4, 0.6), 'tap-spread': about(1.2, 0.3) };
    const lines = [
      played('a', fine),
      played('b', { ...fine, 'tap-spread': about(3.4, 0.3) }),
      played('c', fine),
      played('d', { ...fine, 'timing-spread-share': about(5.4, 0.6) }),
      played('e', fine),
    ];
    expect(found(lines)).toEqual([
      ['b', 'tap-spread', true],
      ['d', 'timing-spread-share', true],
    ]);
  });

  it('are ranked by what is known of them: a wide interval says less than a narrow one', () => {
    const lines = [
      uneven('a', 4),
      uneven('b', 4.1),
      uneven('wide', 8, 4),
      uneven('narrow', 7),
      uneven('c', 4),
    ];
    expect(found(lines)[0]).toEqual(['narrow', 'timing-spread-share', true]);
  });

  it('hold loudness against lines of the same pad, sticks and device only', () => {
    const soft = { 'tap-spread': about(1.2, 0.3) };
    const lines = [
      played('a', soft),
      played('b', soft),
      played('c', { 'tap-spread': about(4, 0.3) }, 'practice snare'),
    ];
    const [first, ...rest] = weakestLines(lines, 3);
    expect([first!.label, rest.at(-1)!.label, rest.at(-1)!.others]).toEqual(['a', 'c', null]);
    expect(standingWords(rest.at(-1)!)).toBe('Nothing else was played to hold it against.');
  });

  it('draw what a line is likely worth towards the others, the more the less is known of it', () => {
    const rest = [uneven('a', 4), uneven('b', 4.4), uneven('c', 5)];
    const [sure] = weakestLines([...rest, uneven('d', 8, 0.4)], 1);
    const [unsure] = weakestLines([...rest, uneven('d', 8, 3)], 1);
    for (const { mark, likely, others } of [sure!, unsure!]) {
      expect(likely.value).toBeGreaterThan(mark.value);
      expect(likely.value).toBeLessThan(others!);
    }
    expect(unsure!.likely.value).toBeGreaterThan(sure!.likely.value);
  });

  it('say in plain words what makes them weak', () => {
    const words = (measure: string, value: number, half: number) => {
      const [line] = weakestLines([played('a', { [measure]: about(value, half) })], 1);
      return weakWords(line!);
    };
    expect(words('timing-spread-share', 6.1, 1)).toBe('uneven in time: 6.1 % of a partial (5.1 to 7.1)');
    expect(words('accent-to-tap-ratio', 5, 1)).toBe(
      'accents stand out too little: 5.0 dB over the taps (4.0 to 6.0)',
    );
    expect(words('tap-spread', 3, 0.5)).toBe('taps differ in loudness: 3.0 dB (2.5 to 3.5)');
    expect(words('hand-offset-share', -6, 2)).toMatch(/^the right hand comes late: /);
    expect(words('timing-spread-share', 3, 0.5)).toBe('timing spread: 3.0 % of a partial (2.5 to 3.5)');
    expect(words('hand-offset-share', 1, 2)).toMatch(/^left hand after right: /);
  });

  it('say that chance alone may do it where it may', () => {
    const lines = [uneven('a', 5, 2), uneven('b', 6, 2), uneven('c', 5.5, 2)];
    expect(standingWords(weakestLines(lines, 1)[0]!)).toMatch(/^Lines that are equally good scatter as much/);
    const [clear] = weakestLines([uneven('a', 4), uneven('b', 4.1), uneven('c', 8)], 1);
    expect(standingWords(clear!)).toMatch(
      /^Likely worth \d\d points in that \(\d\d to \d\d\), the other lines 89: clearly weaker than the others\.$/,
    );
  });

  it('say of nothing that it stands apart where nothing else was played', () => {
    expect(found([uneven('a', 9)])).toEqual([['a', 'timing-spread-share', false]]);
    expect(weakestLines([], 2)).toEqual([]);
  });

  it.each([2, 5, 12])('of %i equal lines one stands apart in at most one lesson of twenty', (count) => {
    const random = seeded(`lines ${count}`);
    const normal = () => random.normal();
    const lessons = 6000 / count;
    let wrong = 0;
    for (let lesson = 0; lesson < lessons; lesson++) {
      const lines = Array.from({ length: count }, (_, i) =>
        played(`${i}`, {
          'timing-spread-share': about(6 + 0.5 * normal(), 0.98),
          'tap-spread': about(2 + 0.2 * normal(), 0.392),
          'hand-offset-share': about(3 + 0.5 * normal(), 0.98),
        }),
      );
      if (weakestLines(lines, count).some(({ apart }) => apart)) wrong++;
    }
    // 5 %, and three standard errors of what is counted.
    expect(wrong / lessons).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / lessons));
    expect(wrong).toBeGreaterThan(0);
  });
});
