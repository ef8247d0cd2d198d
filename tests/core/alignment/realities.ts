import { line, sheetOf } from './made-sheet.ts';
import { barStarts, inside, whole } from './places-in-sheet.ts';
import { sheets } from './played-sheets.ts';
import { seeded } from './seeded.ts';
import type { TakeSpec } from './simulated-take.ts';

const pick = <T>(list: readonly T[], share: number): T => list[Math.floor(share * list.length)]!;

type Reality = (seed: number) => TakeSpec;
const names = Object.keys(sheets);
const manyLines = ['three lines', 'four lines, long'];
const withSheet =
  (change: (seed: number, random: ReturnType<typeof seeded>) => Partial<TakeSpec>, from = names): Reality =>
  (seed) => {
    const random = seeded(seed * 7919 + 13);
    const sheet = sheets[pick(from, random.uniform())]!;
    return { sheet, seed, ...change(seed, random) };
  };

/** Somewhere inside, the take goes on a partial off: `next` slots after the one played last. */
const slipped = (after: 'left-out' | 'put-in', next: number): Reality =>
  withSheet(
    (_, random) => {
      const share = random.uniform();
      return {
        parts: (mains) => {
          const stop = inside(mains, share);
          return [
            { from: 0, to: stop, after: 0, state: 'graded' },
            { from: stop + next, to: mains.length - 1, after, state: 'graded' },
          ];
        },
      };
    },
    names.filter((name) => name !== 'rests'),
  );

/** What happens in real takes, one reality each, and several at once. */
export const realities: Readonly<Record<string, Reality>> = {
  clean: withSheet(() => ({ jitter: 0.03 })),
  sloppy: withSheet(() => ({ jitter: 0.12, spreadDb: 2.5 })),
  'sloppy, strokes missed and extra': withSheet(() => ({ jitter: 0.09, missed: 0.03, extra: 0.02 })),
  'noodling first': withSheet(() => ({ before: 'noodling', afterwards: 'noodling' })),
  'talk first': withSheet(() => ({ before: 'talk', afterwards: 'sticks-down' })),
  'counted in on the pad': withSheet(() => ({ before: 'counted-on-pad' })),
  'counted in with sticks': withSheet(() => ({ before: 'sticks' })),
  missed: withSheet(() => ({ missed: 0.05 })),
  extra: withSheet(() => ({ extra: 0.03 })),
  bounces: withSheet(() => ({ bounced: 0.1 })),
  'accents lost': withSheet(() => ({ accentsLost: 0.15, spreadDb: 2.5 })),
  'little contrast': withSheet(() => ({ ratioDb: 7, spreadDb: 2 })),
  'flams and drags': (seed) => ({
    seed,
    sheet: sheetOf(line('>lRLR >rLRL >llRLR >rrLRL', { repeats: 6, bpm: 90 })),
    bounced: 0.03,
  }),
  'restart from the beginning': withSheet((_, random) => {
    const share = random.uniform();
    const clutter = random.whole(0, 6);
    return {
      parts: (mains) => {
        const stop = inside(mains, share * 0.6);
        return [
          { from: 0, to: stop, after: 0, state: 'abandoned' },
          { ...whole(mains), after: 2 + 3 * share, clutter },
        ];
      },
    };
  }),
  'restart from a bar': withSheet((_, random) => {
    const share = random.uniform();
    return {
      parts: (mains) => {
        const stop = inside(mains, share);
        const again = barStarts(mains).filter((m) => m <= stop && mains[m]!.line === mains[stop]!.line);
        const from = again[Math.max(0, again.length - 2)]!;
        return [
          { from: 0, to: from - 1, after: 0, state: 'graded' as const },
          { from, to: stop, after: 'in-time' as const, state: 'abandoned' as const },
          { from, to: mains.length - 1, after: 1.5 + 3 * share, state: 'graded' as const },
        ].filter((part) => part.to >= part.from);
      },
    };
  }),
  'one repeat too many': withSheet(
    (_, random) => {
      const share = random.uniform();
      return {
        parts: (mains) => {
          const lineAgain = Math.floor(share * (mains.at(-1)!.line + 1));
          const end = mains.findLastIndex((slot) => slot.line === lineAgain);
          const from = mains.findIndex(
            (slot) => slot.line === lineAgain && slot.repeat === mains[end]!.repeat,
          );
          return [
            { from: 0, to: end, after: 0, state: 'graded' as const },
            { from, to: end, after: 'in-time' as const, state: 'surplus' as const },
            { from: end + 1, to: mains.length - 1, after: 1.1, state: 'graded' as const },
          ].filter((part) => part.to >= part.from);
        },
      };
    },
    [...manyLines, 'one line'],
  ),
  'line left out': withSheet((_, random) => {
    const share = random.uniform();
    const pause = random.between(1, 4);
    return {
      parts: (mains) => {
        const out = 1 + Math.floor(share * (mains.at(-1)!.line - 1));
        return [
          { from: 0, to: mains.findIndex((slot) => slot.line === out) - 1, after: 0, state: 'graded' },
          {
            from: mains.findIndex((slot) => slot.line === out + 1),
            to: mains.length - 1,
            after: pause,
            state: 'graded',
          },
        ];
      },
    };
  }, manyLines),
  'page turn': withSheet(
    () => ({
      parts: (mains) => {
        const turn = mains.findIndex((slot) => slot.line === 1);
        return [
          { from: 0, to: turn - 1, after: 0, state: 'graded' },
          { from: turn, to: mains.length - 1, after: 4, state: 'graded' },
        ];
      },
    }),
    manyLines,
  ),
  'no gap between lines': withSheet(
    () => ({
      parts: (mains) =>
        [...new Set(mains.map((slot) => slot.line))].map((at, i) => ({
          from: mains.findIndex((slot) => slot.line === at),
          to: mains.findLastIndex((slot) => slot.line === at),
          after: i === 0 ? (0 as const) : ('in-time' as const),
          state: 'graded' as const,
        })),
    }),
    manyLines,
  ),
  'hesitation in a line': withSheet((_, random) => {
    const share = random.uniform();
    return {
      parts: (mains) => {
        const stop = inside(mains, share);
        return [
          { from: 0, to: stop, after: 0, state: 'graded' },
          { from: stop + 1, to: mains.length - 1, after: 1.2 + 2 * share, state: 'graded' },
        ];
      },
    };
  }),
  'partial dropped': slipped('left-out', 2),
  'stroke put in': slipped('put-in', 1),
  'tempo off': withSheet((_, random) => ({ tempo: random.between(0.7, 1.3) })),
  'half tempo': withSheet(() => ({ tempo: 0.5 })),
  'double tempo': withSheet(() => ({ tempo: 1.6 }), ['one line', 'three lines', 'accent on 2']),
  'tempo open': withSheet((seed, random) => {
    const base = sheets[pick(names, random.uniform())]!;
    const open = { ...base, lines: base.lines.map((one) => ({ ...one, bpm: null })) };
    return { seed, sheet: open, tempo: random.between(0.6, 1.2) };
  }),
  drift: withSheet((_, random) => ({ drift: random.between(-0.05, 0.05), wander: 0.2 })),
  'with a click': withSheet(() => ({ click: true, missed: 0.02 })),
  'restart in a mess': withSheet((_, random) => {
    const share = random.uniform();
    const clutter = random.whole(0, 5);
    return {
      before: 'talk',
      afterwards: 'sticks-down',
      jitter: random.between(0.04, 0.09),
      missed: 0.02,
      extra: 0.01,
      bounced: 0.02,
      accentsLost: 0.05,
      tempo: random.between(0.9, 1.1),
      parts: (mains) => [
        { from: 0, to: inside(mains, share * 0.8), after: 0, state: 'abandoned' },
        { ...whole(mains), after: 2 + 3 * share, clutter },
      ],
    };
  }),
  'all at once': withSheet((_, random) => ({
    before: pick(['talk', 'noodling', 'sticks', 'counted-on-pad'] as const, random.uniform()),
    afterwards: pick(['noodling', 'sticks-down'] as const, random.uniform()),
    jitter: random.between(0.04, 0.1),
    missed: 0.02,
    extra: 0.01,
    bounced: 0.03,
    accentsLost: 0.05,
    drift: random.between(-0.04, 0.04),
    tempo: random.between(0.85, 1.15),
  })),
};
