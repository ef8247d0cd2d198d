import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measures, measureTake } from '../../../src/core/measures/index.ts';
import { measureName } from '../../../src/core/result/names.ts';
import { hasSentence } from '../../../src/core/result/sentences.ts';
import type { MeasureResult } from '../../../src/core/result/take-result.ts';
import { validateTakeResult } from '../../../src/core/result/validate-take-result.ts';
import { exampleResult } from '../../support/example-result.ts';
import { players, simulatedPerformance, type Take } from './simulated-performance.ts';

const sheets = [
  'tempo: 110\n>RLR >LRL; x12',
  'tempo: 110\n>RLR >LRL',
  'tempo: 60\nR',
  'tempo: 90\n>RRL R>LL; x6; rest: 8\nRL>R LR>L; x6; lead: changes\n>RLRL >RRLL; x4; tempo: 120',
  'tempo: 90\n>R>L>R >L>R>L; x10',
  'tempo: 200\nR- -L >R-R; x9',
  'tempo: 110\nlR>LR rL>RL; x10',
];

/** The example's document with these measures, and with strokes enough for what they point at. */
function documentOf(measures: readonly MeasureResult[], strokeCount: number): object {
  const { strokes, sheet, ...rest } = exampleResult();
  const filled = (column: readonly unknown[]) => [
    ...column,
    ...Array.from({ length: Math.max(0, strokeCount - column.length) }, () => column.at(-1)),
  ];
  const columns = Object.entries(strokes).map(([name, column]) => [name, filled(column)]);
  const lines = [...sheet.lines, ...sheet.lines, ...sheet.lines];
  return { ...rest, sheet: { ...sheet, lines }, strokes: Object.fromEntries(columns), measures };
}

describe('measures', () => {
  it('have ids of their own', () => {
    expect(new Set(measures.map((m) => m.id)).size).toBe(measures.length);
  });

  it.each(measures.map((m) => [m.id, m] as const))(
    '%s has a description, a source, a unit and a test',
    (id, measure) => {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(measure.title.length).toBeGreaterThan(3);
      expect(measure.describes).toMatch(/^[A-Z].*\.$/);
      expect(measure.source.length).toBeGreaterThan(20);
      // One name in tables, reports and the handbook; a share of a partial says so behind it.
      expect(measure.title).toBe(
        id.endsWith('-share') ? `${measureName(id)}, share of a partial` : measureName(id),
      );
      expect(['ms', '%', 'dB', 'probability', 'correlation']).toContain(measure.unit);
      expect(['near-zero', 'low', 'high', 'within-band']).toContain(measure.better);
      expect(
        existsSync(join(import.meta.dirname, `${id}.test.ts`)),
        `tests/core/measures/${id}.test.ts`,
      ).toBe(true);
    },
  );

  it.each(measures.map((m) => [m.id, m] as const))(
    "%s says in short sentences how it comes about, how to read it and what it can't tell",
    (_, { formula, interval, reading, limits, reasons }) => {
      expect(formula.length).toBeGreaterThan(15);
      expect(limits.length).toBeGreaterThan(0);
      for (const text of [interval, reading, ...limits]) {
        expect(text).toMatch(/^[A-Z0-9].*\.$/);
        for (const one of text.split(/(?<=[.?!]) /))
          expect(one.split(' ').length, one).toBeLessThanOrEqual(25);
      }
      // Words that ask for force or claim what sound doesn't tell.
      expect(reading).not.toMatch(/\b(harder|louder accents|force|grip|tens)/i);
      expect(new Set(reasons).size).toBe(reasons.length);
      for (const code of reasons) expect(hasSentence(code), code).toBe(true);
    },
  );

  it('give one result for the whole take first, then parts that differ', () => {
    const take = simulatedPerformance({ sheet: sheets[3]!, seed: 1, player: players['independent jitter']! });
    for (const measure of measures) {
      const scopes = measure.compute(take).map((r) => JSON.stringify(r.scope));
      expect(scopes[0]).toBe('{}');
      expect(new Set(scopes).size).toBe(scopes.length);
    }
  });

  it('give valid, finite, ordered figures or a reason that they name, whatever was played', () => {
    const given = new Map(measures.map(({ id }) => [id, new Set<string>()]));
    const takes = fc.record({
      sheet: fc.constantFrom(...sheets),
      seed: fc.nat(1e6),
      player: fc.constantFrom(...Object.values(players), {
        clock: 0,
        motor: 0,
        correction: 1,
        selfPaced: false,
      }),
      missedShare: fc.constantFrom(0, 0.02, 0.4, 0.95),
      strayShare: fc.constantFrom(0, 0.1),
      timeSe: fc.constantFrom(0, 0.0001, 0.01),
      levelSe: fc.constantFrom(0, 0.1, 5),
      flat: fc.boolean(),
      reference: fc.constantFrom('heard-click', 'fitted-tempo'),
      cut: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
      abandoned: fc.boolean(),
      leadSwapped: fc.boolean(),
    });
    fc.assert(
      fc.property(takes, ({ flat, cut, abandoned, leadSwapped, ...take }) => {
        const performance = simulatedPerformance({
          ...take,
          ...(flat ? { level: () => -20, levelSd: () => 0 } : {}),
          change: (alignment) => {
            const [only] = alignment.segments;
            if (cut === null) return { ...alignment, segments: [{ ...only!, leadSwapped }] };
            // The run breaks off somewhere and a second one begins.
            const last = Math.max(0, Math.min(only!.lastSlot - 1, Math.floor(cut * only!.lastSlot)));
            const segments = [
              { ...only!, lastSlot: last, state: abandoned ? ('abandoned' as const) : ('graded' as const) },
              { ...only!, firstSlot: last + 1, leadSwapped },
            ];
            const matches = alignment.matches.map((m) => ({ ...m, segment: m.slot <= last ? 0 : 1 }));
            return { ...alignment, segments, matches };
          },
        } as Take);
        const results = measureTake(performance);
        expect(results.length).toBeGreaterThanOrEqual(measures.length);
        validateTakeResult(JSON.parse(JSON.stringify(documentOf(results, performance.times.length))));
        for (const { id, outcome } of results) {
          if (outcome.state !== 'measured') {
            given.get(id)!.add(outcome.reason.code);
            continue;
          }
          const { value, low, high, pointsAt } = outcome;
          expect([value, low, high].every(Number.isFinite), `${id} ${value} ${low} ${high}`).toBe(true);
          const room = 1e-9 * (1 + Math.abs(value));
          expect(low, id).toBeLessThanOrEqual(value + room);
          expect(high, id).toBeGreaterThanOrEqual(value - room);
          expect(pointsAt.length, id).toBeLessThanOrEqual(12);
          expect(new Set(pointsAt).size, id).toBe(pointsAt.length);
          for (const at of pointsAt) expect(performance.times[at], id).toBeDefined();
        }
      }),
      { numRuns: 150, seed: 20 },
    );
    for (const { id, reasons } of measures)
      expect(
        [...given.get(id)!].filter((code) => !reasons.includes(code)),
        id,
      ).toEqual([]);
  });

  it('say the same twice', () => {
    const take = () => simulatedPerformance({ sheet: sheets[3]!, seed: 8, player: players['no click']! });
    expect(measureTake(take())).toEqual(measureTake(take()));
  });

  it('measure contrast, spreads, places and missed strokes at 48 strokes', () => {
    const take = simulatedPerformance({
      sheet: 'tempo: 110\n>RLR >LRL >RLR >LRL; x4',
      seed: 1,
      player: players['middling corrector']!,
    });
    const whole = measureTake(take).filter((r) => JSON.stringify(r.scope) === '{}');
    const refused = whole.filter((r) => r.outcome.state !== 'measured').map((r) => r.id);
    expect(refused).toEqual([
      'accent-bend',
      'accent-bend-share',
      'hand-change-gap',
      'silent-wander',
      'clock-spread',
      'motor-spread',
      'second-accent',
      'rebound-decay',
      'grace-notes',
    ]);
  });

  it('take time about as a take is long: eight times the strokes, far under sixty-four times the work', () => {
    const spent = (repeats: number) => {
      const take = simulatedPerformance({
        sheet: `tempo: 110\n>RLR >LRL; x${repeats}`,
        seed: 1,
        player: players['middling corrector']!,
      });
      const before = process.cpuUsage();
      measureTake(take);
      const { user, system } = process.cpuUsage(before);
      return user + system;
    };
    spent(84);
    // By turns and the quickest of each, since other programs may share the machine.
    const rounds = [1, 2, 3].map(() => ({ short: spent(84), long: spent(672) }));
    const quickest = (of: 'short' | 'long') => Math.min(...rounds.map((round) => round[of]));
    expect(quickest('long') / quickest('short')).toBeLessThan(8 ** 1.5);
  });
});
