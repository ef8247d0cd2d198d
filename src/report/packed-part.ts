import type { DrawnPart } from './drawn-part.ts';
import { type NumberRun, packRun, unpackRun } from './number-run.ts';

/** Steps that packed numbers are rounded to: a tenth of a millisecond, a hundredth of a decibel, ms or BPM. */
const perSecond = 10_000;
const perUnit = 100;
const rounded = (scale: number) => (value: number) => Math.round(value * scale);

type Role = DrawnPart['strokes']['role'][number];
type State = DrawnPart['slots']['state'][number];
const roles: readonly Role[] = ['matched', 'extra', 'doubled', 'abandoned', 'surplus', 'outside'];
const states: readonly State[] = ['played', 'missed', 'not-reached'];

type Kept = Omit<DrawnPart, 'strokes' | 'slots' | 'tempo'>;

/** A drawn part with its long columns packed: a quarter of its size as text. Null stands as −1 beside whole numbers. */
export interface PackedPart extends Kept {
  readonly packed: {
    readonly time: readonly number[];
    readonly level: readonly number[];
    readonly deviation: readonly (number | null)[];
    readonly role: string;
    readonly hand: string;
    readonly slot: NumberRun;
    readonly place: Readonly<
      Record<'line' | 'repeat' | 'bar' | 'beat' | 'partial' | 'divisions' | 'stroke', NumberRun>
    >;
    readonly accent: string;
    readonly grace: string;
    readonly state: string;
    readonly tempoTime: readonly number[];
    readonly tempoBpm: readonly number[];
    readonly tempoSegment: NumberRun;
  };
}

/** The drawn part as it stands in the file of a report. */
export function packPart({ strokes, slots, tempo, ...kept }: DrawnPart): PackedPart {
  const whole = (column: readonly (number | null)[]) => packRun(column.map((value) => value ?? -1));
  const { line, repeat, bar, beat, partial, divisions } = slots;
  return {
    ...kept,
    packed: {
      time: steps(strokes.time.map(rounded(perSecond))),
      level: steps(strokes.levelDb.map(rounded(perUnit))),
      deviation: strokes.deviationMs.map((ms) => (ms === null ? null : rounded(perUnit)(ms))),
      role: strokes.role.map((role) => roles.indexOf(role)).join(''),
      hand: strokes.hand.map((hand) => hand ?? '-').join(''),
      slot: whole(strokes.slot),
      place: {
        line: packRun(line),
        repeat: packRun(repeat),
        bar: packRun(bar),
        beat: packRun(beat),
        partial: packRun(partial),
        divisions: packRun(divisions),
        stroke: whole(slots.stroke),
      },
      accent: slots.accent.map(Number).join(''),
      grace: slots.grace.map(Number).join(''),
      state: slots.state.map((state) => states.indexOf(state)).join(''),
      tempoTime: steps(tempo.time.map(rounded(perSecond))),
      tempoBpm: steps(tempo.bpm.map(rounded(perUnit))),
      tempoSegment: packRun(tempo.segment),
    },
  };
}

/** The drawn part that was packed, its numbers rounded. */
export function unpackPart({ packed, ...kept }: PackedPart): DrawnPart {
  const orNull = (run: NumberRun) => unpackRun(run).map((value) => (value < 0 ? null : value));
  const { stroke, ...place } = packed.place;
  const columns = Object.fromEntries(
    Object.entries(place).map(([name, run]) => [name, unpackRun(run)]),
  ) as Record<keyof typeof place, number[]>;
  const flags = (text: string) => [...text].map((flag) => flag === '1');
  return {
    ...kept,
    strokes: {
      time: sums(packed.time).map((value) => value / perSecond),
      timeSe: [],
      levelDb: sums(packed.level).map((value) => value / perUnit),
      levelSe: [],
      role: [...packed.role].map((code) => roles[Number(code)]!),
      slot: orNull(packed.slot),
      hand: [...packed.hand].map((hand) => (hand === '-' ? null : (hand as 'R' | 'L'))),
      deviationMs: packed.deviation.map((value) => (value === null ? null : value / perUnit)),
    },
    slots: {
      ...columns,
      hand: [],
      buzz: [],
      position: columns.beat.map((beat, i) => beat + (columns.partial[i]! - 1) / columns.divisions[i]!),
      accent: flags(packed.accent),
      grace: flags(packed.grace),
      stroke: orNull(stroke),
      state: [...packed.state].map((code) => states[Number(code)]!),
    },
    tempo: {
      time: sums(packed.tempoTime).map((value) => value / perSecond),
      bpm: sums(packed.tempoBpm).map((value) => value / perUnit),
      segment: unpackRun(packed.tempoSegment),
    },
  };
}

const steps = (column: readonly number[]) => column.map((value, i) => value - (column[i - 1] ?? 0));

function sums(column: readonly number[]): number[] {
  let sum = 0;
  return column.map((step) => {
    sum += step;
    return sum;
  });
}
