import { expect, it } from 'vitest';
import { scenario } from '../../fixtures/generator/scenarios.ts';
import { benchTake } from './bench-take.ts';
import { takesOf } from './bench-takes.ts';
import { detectionReport } from './detection-report.ts';
import { hearTake } from './hear-take.ts';
import { agreement } from './match-events.ts';

it('hears a clean take whole, levels as on the strokes alone', () => {
  const take = benchTake('clean-160', 'clean', scenario('clean-160', 1001).spec);
  expect(take.dryLevels).toHaveLength(take.truth.strokes.length);
  const { score, anyClass, clicks } = hearTake(take);
  expect(agreement(score.within3Ms, score.strokes, score.heard).f).toBe(1);
  expect(anyClass).toBe(score.strokes);
  expect(clicks).toEqual({ there: 0, found: 0, claimed: 0 });
  for (const { time, level } of score.errors) {
    expect(Math.abs(time)).toBeLessThan(1e-4);
    expect(Math.abs(level!)).toBeLessThan(0.5);
  }
});

it('reports clicks, faults and kinds', () => {
  const heard = [...takesOf(1001, undefined, 'click-20-bell')].map(hearTake);
  expect(heard).toHaveLength(1);
  const { score, clicks } = heard[0]!;
  expect(clicks.found).toBeGreaterThan(0.9 * clicks.there);
  const deaf = { ...heard[0]!, anyClass: 0, score: { ...score, take: 'deaf', within10Ms: 0, errors: [] } };
  const text = detectionReport({
    heard: [...heard, deaf],
    compared: heard,
    others: new Map([['nobody', [score]]]),
    seeds: [1001],
    comparedSeeds: [1001],
    notices: ['left out'],
  });
  expect(text).toContain('- left out');
  expect(text).toMatch(/^\| click \| yes \| 96 \|/m);
  expect(text).toMatch(/^\| deaf \(click\) \| 0.0000 \|/m);
  expect(text).not.toMatch(/NaN|undefined/);
});
