import { describe, expect, it } from 'vitest';
import { barOfBeats, longestBar } from '../../../src/core/exercise/bars.ts';
import { parseNotation } from '../../../src/core/exercise/parse-notation.ts';

describe('barOfBeats', () => {
  const bars = (text: string, beatsInBar: number) => {
    const parsed = parseNotation(text);
    return parsed.ok ? barOfBeats(parsed.beats, beatsInBar) : 'fault';
  };

  it('goes by the bar lines, else by counting', () => {
    expect(bars('RLR LRL | RLR', 4)).toEqual([0, 0, 1]);
    expect(bars('| R L R', 2)).toEqual([0, 0, 1]);
    expect(bars('R L R L R', 4)).toEqual([0, 0, 0, 0, 1]);
  });
});

describe('longestBar', () => {
  const bars = (text: string) => {
    const parsed = parseNotation(text);
    return parsed.ok ? longestBar(parsed.beats) : 'fault';
  };

  it('counts beats between bar lines, the ends of the notation included', () => {
    expect(bars('R L R')).toBeNull();
    expect(bars('| R L R')).toBeNull();
    expect(bars('R | L R L | R L')).toBe(3);
    expect(bars('R | L R L R')).toBe(4);
  });
});
