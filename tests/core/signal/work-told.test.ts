import { expect, it } from 'vitest';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { partOfWork, type WorkPhase } from '../../../src/core/signal/work-told.ts';
import { openedSample } from '../../support/opened-sample.ts';

it('puts a part of a phase where it stands in the whole', () => {
  const told: unknown[] = [];
  const tell = partOfWork((phase, share) => told.push([phase, share]), 0.5, 0.75)!;
  tell('laying', 0);
  tell('laying', 1);
  expect(told).toEqual([
    ['laying', 0.5],
    ['laying', 0.75],
  ]);
  expect(partOfWork(undefined, 0, 1)).toBeUndefined();
});

it.each(['demo', 'no-count-in'])('of grading %s is told in order and never back within a phase', (name) => {
  const told: { phase: WorkPhase; share: number }[] = [];
  const { source, sheet } = openedSample(name);
  gradeTake(source, sheet, { tell: (phase, share) => told.push({ phase, share }) });
  const phases = told.map(({ phase }) => phase);
  expect([...new Set(phases)]).toEqual(['listening', 'laying', 'measuring']);
  const order = ['listening', 'laying', 'measuring'];
  expect(phases).toEqual(phases.toSorted((a, b) => order.indexOf(a) - order.indexOf(b)));
  for (let i = 1; i < told.length; i++) {
    if (told[i]!.phase === told[i - 1]!.phase)
      expect(told[i]!.share).toBeGreaterThanOrEqual(told[i - 1]!.share);
  }
  for (const { share } of told) expect(share >= 0 && share <= 1).toBe(true);
  expect(told.length).toBeGreaterThan(40);
});
