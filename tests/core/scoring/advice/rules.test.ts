import { describe, expect, it } from 'vitest';
import { sentence } from '../../../../src/core/result/sentences.ts';
import type { MeasureResult } from '../../../../src/core/result/take-result.ts';
import type { TurnedAccents } from '../../../../src/core/scoring/advice/finding.ts';
import { adviceRules } from '../../../../src/core/scoring/advice/index.ts';
import { input, made } from './made-input.ts';

/** For each code: measures that must bring it, with facts it must carry. */
const cases: [string, MeasureResult[], Record<string, unknown>][] = [
  [
    'taps-too-loud',
    [made('accent-to-tap-ratio', 4, 1), made('tap-ceiling', 40, 8, {}, [3, 4])],
    { value: 4, low: 3, high: 5, wantedDb: 8 },
  ],
  ['contrast-too-wide', [made('accent-to-tap-ratio', 25, 1)], { wantedDb: 20 }],
  ['accents-uneven', [made('accent-spread', 4, 1)], { value: 4 }],
  [
    'taps-uneven',
    [
      made('tap-spread', 4, 1),
      made('tap-spread', 2, 0.5, { hand: 'R' }),
      made('tap-spread', 5, 1, { hand: 'L' }),
    ],
    { hand: 'L' },
  ],
  [
    'accents-and-taps-overlap',
    [made('separation', 0.9, 0.05)],
    { value: expect.closeTo(0.1, 9), low: expect.closeTo(0.05, 9), high: expect.closeTo(0.15, 9) },
  ],
  [
    'partial-off-place',
    [
      made('placement-share', 8, 2),
      made('placement', -4, 3, { partial: 2 }),
      made('placement', 16, 4, { partial: 3 }),
    ],
    { partial: 3, direction: 'late', value: 16, low: 12, high: 20 },
  ],
  [
    'partial-off-place',
    [
      made('placement-share', 8, 2),
      made('placement', -16, 4, { partial: 2 }),
      made('placement', 17, 18, { partial: 3 }),
    ],
    { partial: 2, direction: 'early', value: 16, low: 12, high: 20 },
  ],
  [
    'bend-at-accent',
    [
      made('accent-bend-share', 7, 2),
      made('accent-bend', -14, 4, { place: 'after' }),
      made('accent-bend', 5, 4, { place: 'before' }),
    ],
    { place: 'after', direction: 'early', value: 14 },
  ],
  [
    'hands-apart-in-time',
    [made('hand-offset-share', -6, 2), made('hand-offset', -12, 4)],
    { laterHand: 'R', value: 12, low: 8, high: 16 },
  ],
  [
    'hands-apart-in-ratio',
    [
      made('hand-ratio-gap', 5, 1),
      made('accent-to-tap-ratio', 13, 1, { hand: 'R' }),
      made('accent-to-tap-ratio', 8, 1, { hand: 'L' }),
    ],
    { flatterHand: 'L', rightDb: 13, leftDb: 8, value: 5 },
  ],
  ['taps-after-accents-loud', [made('after-accent-leak', 3, 1)], { value: 3, low: 2, high: 4 }],
  ['accents-lost', [made('lost-accents', 8, 3)], { value: 8, accents: 72 }],
  ['fades-at-the-end', [made('timing-spread-trend', 50, 20)], { 'timing-spread-trend': 50 }],
  ['fades-at-the-end', [made('tap-level-trend', 3, 1), made('ratio-trend', -4, 1)], { 'ratio-trend': 4 }],
  ['moving-tempo', [made('tempo-change', -4, 1)], { direction: 'falls', value: 4, low: 3, high: 5 }],
  ['other-tempo', [made('tempo-error', 4, 1)], { direction: 'faster' }],
  [
    'strokes-missed',
    [made('missed-and-extra', 8, 3), made('missed', 6, 2), made('extra', 1, 1), made('doubled', 1, 1)],
    { missed: 6, extra: 2 },
  ],
  [
    'strokes-extra',
    [made('missed-and-extra', 8, 3), made('missed', 2, 2), made('extra', 3, 1), made('doubled', 3, 1)],
    { missed: 2, extra: 6 },
  ],
  [
    'timing-uneven',
    [made('timing-spread-share', 12, 2), made('timing-spread', 24, 4)],
    { value: 12, spreadMs: 24 },
  ],
];

const turned = (rest: Partial<TurnedAccents>): TurnedAccents => ({
  line: 1,
  repeat: 2,
  bar: 1,
  beat: 3,
  by: 1,
  fromStart: false,
  writtenPartial: null,
  playedPartial: null,
  stroke: 30,
  ...rest,
});

describe('the rules of advice', () => {
  it.each(cases)('say %s, and nothing else, when the figures leave no doubt', (code, measures, facts) => {
    const found = adviceRules.flatMap((rule) => rule(input(measures)));
    expect(found.map((f) => f.code)).toEqual([code]);
    expect(found[0]!.facts).toMatchObject(facts);
    expect(found[0]!.lost).toBeGreaterThan(0);
  });

  it.each(cases)('leave %s unsaid when the intervals reach as far as secure', (_, measures) => {
    const unsure = measures.map((m): MeasureResult => {
      if (m.outcome.state !== 'measured') return m;
      return { ...m, outcome: { ...m.outcome, low: m.outcome.value - 60, high: m.outcome.value + 60 } };
    });
    expect(adviceRules.flatMap((rule) => rule(input(unsure)))).toEqual([]);
  });

  it('are each reached by a case above', () => {
    const turns = [turned({ stroke: 30 })];
    const reached = adviceRules.filter(
      (rule) =>
        cases.some(([, measures]) => rule(input(measures)).length > 0) ||
        rule({ ...input([]), turns }).length > 0,
    );
    expect(reached).toHaveLength(adviceRules.length);
  });

  it('say where the accents turn round, once, before anything else', () => {
    const turns = [turned({ by: -1, stroke: 30 }), turned({ repeat: 3, beat: 1, stroke: 48 })];
    const [found, ...more] = adviceRules.flatMap((rule) => rule({ ...input([]), turns }));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'accents-turned-round', strokes: [30, 48], lost: 20 });
    expect(found!.facts).toEqual({ repeat: 2, bar: 1, beat: 3, by: 1, direction: 'early', times: 2 });
  });

  it('say so where the accents lie off from the start, with the partials written and played', () => {
    const turns = [
      turned({ repeat: 1, beat: 1, by: -1, fromStart: true, writtenPartial: 3, playedPartial: 2, stroke: 0 }),
    ];
    const [found] = adviceRules.flatMap((rule) => rule({ ...input([]), turns }));
    expect(found).toMatchObject({
      code: 'accents-off-from-start',
      facts: { writtenPartial: 3, playedPartial: 2, by: 1, direction: 'early' },
    });
    expect(sentence(found!)).toMatch(
      /^From the start accents are heard on partial 2, where partial 3 is written\./,
    );
  });

  it('want more of an interval when several questions are asked at once', () => {
    // 2 dB with ±1.9 leaves 0 out, but not when all three questions must hold together.
    const fading = made('tap-level-trend', 2, 1.9);
    const codes = (measures: MeasureResult[]) =>
      adviceRules.flatMap((rule) => rule(input(measures))).map(({ code }) => code);
    expect(codes([fading])).toEqual(['fades-at-the-end']);
    const others = [made('timing-spread-trend', 0, 30), made('ratio-trend', 0, 1.9)];
    expect(codes([fading, ...others])).toEqual([]);
  });

  it('say nothing of start and end where the lines were asked for at several tempos', () => {
    const fading = input([made('timing-spread-trend', 50, 20)]);
    const at = (...tempos: (number | null)[]) => ({
      ...fading,
      lines: tempos.map((bpm) => ({ ratioBand: null, bpm })),
    });
    const codes = (of: ReturnType<typeof at>) =>
      adviceRules.flatMap((rule) => rule(of)).map(({ code }) => code);
    expect(codes(at(80, 80))).toEqual(['fades-at-the-end']);
    expect(codes(at(null, null))).toEqual(['fades-at-the-end']);
    expect(codes(at(80, 90, 100, 110))).toEqual([]);
  });

  it('point at the loudest taps where they are known', () => {
    const measures = [made('accent-to-tap-ratio', 4, 1, {}, [9]), made('tap-ceiling', 40, 8, {}, [3, 4])];
    expect(adviceRules.flatMap((rule) => rule(input(measures)))[0]!.strokes).toEqual([3, 4]);
  });

  it("hold a line's ratio against the line's own band and name the line", () => {
    const lines = [{ ratioBand: { minDb: 12, maxDb: 18 } }, { ratioBand: null }];
    const measures = [
      made('accent-to-tap-ratio', 8, 1, { line: 0 }),
      made('accent-to-tap-ratio', 9, 1, { line: 1 }),
    ];
    const found = adviceRules.flatMap((rule) => rule(input(measures, lines)));
    expect(found.map(({ code, facts }) => ({ code, facts }))).toEqual([
      { code: 'taps-too-loud', facts: { value: 8, low: 7, high: 9, line: 1, wantedDb: 12 } },
    ]);
  });
});
