import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';

const plain = { accent: false, buzz: false, grace: [] };

function beatsOf(text: string) {
  const parsed = parseNotation(text);
  if (!parsed.ok) throw new Error(`${parsed.fault.code} at ${parsed.fault.line}:${parsed.fault.column}`);
  return parsed.beats;
}

describe('parseNotation', () => {
  it('reads the example of its comment', () => {
    expect(beatsOf('>RLR >LRL')).toEqual([
      {
        barBefore: false,
        partials: [
          { ...plain, hand: 'R', accent: true },
          { ...plain, hand: 'L' },
          { ...plain, hand: 'R' },
        ],
      },
      {
        barBefore: false,
        partials: [
          { ...plain, hand: 'L', accent: true },
          { ...plain, hand: 'R' },
          { ...plain, hand: 'L' },
        ],
      },
    ]);
  });

  it('reads rests, flams, drags, buzzes and bars, with the accent on either side of a grace note', () => {
    expect(beatsOf('|lR-Lz|\n\tll>R >llR')).toEqual([
      {
        barBefore: true,
        partials: [{ ...plain, hand: 'R', grace: ['L'] }, null, { ...plain, hand: 'L', buzz: true }],
      },
      { barBefore: true, partials: [{ ...plain, hand: 'R', accent: true, grace: ['L', 'L'] }] },
      { barBefore: false, partials: [{ ...plain, hand: 'R', accent: true, grace: ['L', 'L'] }] },
    ]);
  });

  it('divides a beat by the number of its signs', () => {
    expect(beatsOf('R RL RLR RLRL RLRLRL RLRLRLRLRLRL').map((beat) => beat.partials.length)).toEqual([
      1, 2, 3, 4, 6, 12,
    ]);
  });

  it.each([
    ['', 'notation-empty', 1, 1],
    [' \n |', 'notation-empty', 1, 1],
    ['--- ---', 'notation-empty', 1, 1],
    ['RLR RXR', 'unknown-sign', 1, 6],
    ['RLR\nRLR RL🥁', 'unknown-sign', 2, 7],
    ['RLR rlr', 'grace-without-stroke', 1, 5],
    ['RLl- R', 'grace-without-stroke', 1, 3],
    ['RL> LRL', 'accent-without-stroke', 1, 3],
    ['RL>', 'accent-without-stroke', 1, 3],
    ['RL>|R', 'accent-without-stroke', 1, 3],
    ['>>RLR', 'accent-twice', 1, 2],
    ['>l>RLR', 'accent-twice', 1, 3],
    ['zRLR', 'buzz-without-stroke', 1, 1],
    ['R-z', 'buzz-without-stroke', 1, 3],
    ['Rlz', 'buzz-without-stroke', 1, 3],
    ['Rzz', 'buzz-twice', 1, 3],
    ['RLR | | RLR', 'empty-bar', 1, 7],
    ['llllR', 'too-many-grace-notes', 1, 4],
    ['RLRLRLRLRLRLR', 'too-many-divisions', 1, 13],
    ['R '.repeat(513), 'too-many-beats', 1, 1026],
    ['R'.repeat(8001), 'notation-too-long', 1, 1],
  ])('points at the fault in %j', (text, code, line, column) => {
    const parsed = parseNotation(text);
    expect(parsed.ok ? 'no fault' : parsed.fault).toMatchObject({ code, line, column });
  });

  it('answers any text with beats or with a place inside it', () => {
    const signs = fc.string({
      unit: fc.constantFrom('R', 'L', 'r', 'l', 'z', '>', '-', '|', ' ', '\n', 'x'),
    });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string({ unit: 'binary' })), (text) => {
        const parsed = parseNotation(text);
        if (parsed.ok) {
          expect(parsed.beats.every((beat) => beat.partials.length >= 1 && beat.partials.length <= 12)).toBe(
            true,
          );
        } else {
          const lines = text.split('\n');
          expect(parsed.fault.line).toBeLessThanOrEqual(lines.length);
          expect(parsed.fault.column).toBeGreaterThanOrEqual(1);
          expect(parsed.fault.column).toBeLessThanOrEqual([...lines[parsed.fault.line - 1]!].length + 1);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
