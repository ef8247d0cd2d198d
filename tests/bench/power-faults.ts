import { layOut } from '../../src/core/exercise/lay-out.ts';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { Scope } from '../../src/core/result/take-result.ts';
import type { Take } from '../core/measures/simulated-performance.ts';
import { tellingSheet } from './findings-of.ts';

export const lengths = [2, 6, 20];
export const accentLevel = -18;
export const tapLevel = -30;

/** Slots of the sheet that directly follow an accent. */
const followers = new Map(
  lengths.map((repeats) => {
    const parsed = parseSheet(tellingSheet(repeats));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
    const slots = layOut(parsed.sheet);
    return [repeats, new Set(slots.filter((_, i) => slots[i - 1]?.accent).map(({ index }) => index))];
  }),
);

interface Fault {
  readonly name: string;
  readonly id: string;
  readonly scope: Scope;
  readonly unit: string;
  /** What the measure shows of a fault of size 1. */
  readonly shown: number;
  readonly play: (size: number, repeats: number) => Partial<Take>;
}

const ms = 0.001;
export const faults: readonly Fault[] = [
  {
    name: 'left hand late against right',
    id: 'hand-offset',
    scope: {},
    unit: 'ms',
    shown: 1,
    play: (size) => ({ habit: ({ hand }) => (hand === 'L' ? 0.5 : -0.5) * size * ms }),
  },
  {
    name: 'one partial late',
    id: 'placement',
    scope: { partial: 2 },
    unit: 'ms',
    shown: 2 / 3,
    play: (size) => ({ habit: ({ partial }) => (partial === 2 ? size * ms : 0) }),
  },
  {
    name: 'strokes after an accent late',
    id: 'accent-bend',
    scope: { place: 'after' },
    unit: 'ms',
    shown: 1,
    play: (size, repeats) => ({
      habit: ({ index }) => (followers.get(repeats)!.has(index) ? size * ms : 0),
    }),
  },
  {
    name: 'end faster than start',
    id: 'tempo-change',
    scope: {},
    unit: '%',
    shown: 1,
    play: (size) => ({ slowing: -size / 100 }),
  },
  {
    name: "left hand's taps louder than the right's",
    id: 'hand-ratio-gap',
    scope: {},
    unit: 'dB',
    shown: 1,
    play: (size) => ({
      level: ({ accent, hand }) => (accent ? accentLevel : tapLevel + (hand === 'L' ? size / 2 : -size / 2)),
    }),
  },
];
