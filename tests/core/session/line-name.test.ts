import { describe, expect, it } from 'vitest';
import { lineName } from '../../../src/core/session/line-name.ts';

describe('lineName', () => {
  const lines = [
    { label: 'A', bpm: 80 },
    { label: 'A', bpm: 92.5 },
    { label: 'B', bpm: 80 },
    { label: 'B', bpm: 80 },
    { label: 'C', bpm: null },
    { label: 'C', bpm: 100 },
  ];

  it('has the tempo where the same line stands there at another one', () => {
    expect(lines.map((_, i) => lineName(lines, i))).toEqual([
      'A at 80 BPM',
      'A at 92.5 BPM',
      'B',
      'B',
      'C',
      'C at 100 BPM',
    ]);
  });
});
