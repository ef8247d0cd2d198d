import { expect, it } from 'vitest';
import { figure, markdownTable } from './markdown-table.ts';
import { readGnuTime } from './run-timed.ts';
import { speedReport } from './speed-report.ts';
import { speedKinds, speedTake } from './speed-takes.ts';

it('reads what GNU time writes last', () => {
  expect(readGnuTime('a warning\n0.27 61234\n')).toEqual([0.27, 61234]);
  expect(() => readGnuTime('Command exited with non-zero status 1')).toThrow('no times');
});

it('tells times and says that they depend on the machine', () => {
  const timing = { wallSeconds: 0.5, userSeconds: 0.6, mostMegabytes: 81.4 };
  const text = speedReport([{ job: 'strokes', kind: 'pad', seconds: 60, ...timing }], 3, '1 × abacus');
  expect(text).toContain('depend on the machine');
  expect(text).toContain('1 × abacus');
  expect(text).toContain('| strokes | pad | 60 | 0.50 | 0.60 | 120 | 100 | 81 |');
});

it.each(speedKinds)('renders %s at the length asked for', (kind) => {
  const { samples, sampleRate, sheetText } = speedTake(kind, 4);
  expect([samples.length, sampleRate]).toEqual([192_000, 48000]);
  expect(sheetText).toContain('times: 1');
});

it('writes numbers and tables', () => {
  expect([figure(-0.001, 2), figure(-1.25, 1), figure(Number.NaN, 2)]).toEqual(['0.00', '−1.3', '–']);
  expect(markdownTable(['a', 'b'], [['1', '2']])).toBe('| a | b |\n| --- | ---: |\n| 1 | 2 |');
});
