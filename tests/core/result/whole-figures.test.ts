import { expect, it } from 'vitest';
import { wholeFigures } from '../../../src/core/result/whole-figures.ts';

const space = '\u00a0';

it('wholeFigures lets no line break between a figure and its unit, nor inside a range', () => {
  expect(wholeFigures('2.8 % of a partial (2.2 to 3.7)')).toBe(`2.8${space}% of a partial (2.2 to 3.7)`);
  expect(wholeFigures('−1.2 ms, 14 dB, 85 dBA, 92 BPM, 92.0 beats a minute')).toBe(
    `−1.2${space}ms, 14${space}dB, 85${space}dBA, 92${space}BPM, 92.0${space}beats a minute`,
  );
  expect(wholeFigures('1 minute, 3.3 minutes and 5 s')).toBe(
    `1${space}minute, 3.3${space}minutes and 5${space}s`,
  );
  expect(wholeFigures('up to 104–106 BPM')).toBe(`up to 104–\u2060106${space}BPM`);
});

it('wholeFigures leaves what is no unit', () => {
  for (const text of ['5 strokes', 'line 2 says', '3 msgs', 'R 5 – 6', '8 times', 'partial 1 minuet'])
    expect(wholeFigures(text)).toBe(text);
});
