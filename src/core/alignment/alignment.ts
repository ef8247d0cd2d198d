/**
 * Against which time the strokes are held. `played-click`: the tool played the click, latency known;
 * `heard-click`: clicks found in the recording; `asked-tempo`: the tempo asked for, phase fitted;
 * `fitted-tempo`: both fitted. Only the first two can tell ahead from behind.
 */
export type ReferenceKind = 'played-click' | 'heard-click' | 'asked-tempo' | 'fitted-tempo';

/**
 * How a segment came about. `start`: the take's first; `restart`: anew, wherever, after the one before was left;
 * `slip`: a partial dropped or put in while the pulse went on; `jump`: in time to another bar; `repeat`: in time once
 * more through what was just played; `pause`: on with the next slot after a stop; `on`: without a break, where the
 * state or the tempo asked changes, or the beat finds back to a click.
 */
export type Began = 'start' | 'restart' | 'slip' | 'jump' | 'repeat' | 'pause' | 'on';

/** A run through consecutive slots without a break. */
export interface Segment {
  /** First and last slot (indices into the slots, both played or missed inside the run). */
  readonly firstSlot: number;
  readonly lastSlot: number;
  /**
   * `graded`; `abandoned`: given up, its slots were played again; `surplus`: played on top of the repeats
   * asked for. The last two are shown, not graded: a slot has at most one match in a graded segment.
   */
  readonly state: 'graded' | 'abandoned' | 'surplus';
  /** Always said by `alignTake`. */
  readonly began?: Began;
  /** Hands swapped against the sheet from this segment's start: the player led with the other hand. */
  readonly leadSwapped: boolean;
  /**
   * Straight-line fit of this run: onset of beat 0 of the repeat that `firstSlot` belongs to (s), and seconds
   * per beat. A slot is due at origin + period × (its beatTime − firstSlot's beatTime + firstSlot's position).
   */
  readonly origin: number;
  readonly period: number;
}

/** One played stroke on one slot. */
export interface Match {
  readonly slot: number;
  /** Index into the strokes handed to the aligner. */
  readonly stroke: number;
  readonly segment: number;
}

/** How the strokes of a take lie on its slots. Every index refers to the slots and strokes handed in. */
export interface Alignment {
  readonly reference: ReferenceKind;
  readonly segments: readonly Segment[];
  /** In order of time. Holds abandoned segments too. */
  readonly matches: readonly Match[];
  /** Slots inside graded segments without a stroke. */
  readonly missed: readonly number[];
  /** Slots inside graded segments that fell in a gap of the recording: neither played nor missed. */
  readonly unheard?: readonly number[];
  /** Strokes inside a segment that no slot asked for. */
  readonly extra: readonly number[];
  /** Strokes close behind a matched stroke of the same slot: a bounce or a double hit. */
  readonly doubled: readonly number[];
  /** Strokes outside every segment: noodling, talk taken for strokes, sticks laid down. */
  readonly outside: readonly number[];
  /** Why the alignment can't be trusted, or null. */
  readonly doubt: null | { readonly code: string; readonly facts: Readonly<Record<string, number | string>> };
}
