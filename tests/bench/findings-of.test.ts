import { expect, it } from 'vitest';
import { players } from '../core/measures/simulated-performance.ts';
import { findingsOf, justSecure, tellingSheet, withoutFault } from './findings-of.ts';

const takes = 30;
const repeats = 6;
const seeds = Array.from({ length: takes }, (_, k) => 9001 + k);

/** Most takes of so many that a chance of 5 % gives, two standard errors allowed. */
const most = (all: number) => 0.05 * all + 2 * Math.sqrt(0.05 * 0.95 * all);

it.each([
  ['without a fault', withoutFault],
  ['just secure in everything', justSecure],
] as const)('players %s are told of a fault in one take of twenty at most', (_, make) => {
  const told = Object.values(players).map(
    (player) =>
      seeds.filter(
        (seed) => findingsOf({ ...make(player, repeats), sheet: tellingSheet(repeats), seed }).length > 0,
      ).length,
  );
  // Players share seeds, so that their takes aren't independent: each alone keeps the bound.
  for (const count of told) expect(count).toBeLessThanOrEqual(most(takes));
});

it('gross faults are found', () => {
  const player = players['independent jitter']!;
  const found = seeds.filter((seed) => {
    const late = ({ hand }: { readonly hand: string }) => (hand === 'L' ? 0.009 : -0.009);
    const take = { ...withoutFault(player), habit: late, sheet: tellingSheet(repeats), seed };
    return findingsOf(take).includes('hands-apart-in-time');
  });
  expect(found.length / takes).toBeGreaterThan(0.9);
});
