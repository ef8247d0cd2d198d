import type { TakeResult } from '../../core/result/take-result.ts';

/** A beat of the take where it evenly stands. */
interface EvenBeat {
  /** s */
  readonly from: number;
  readonly to: number;
  readonly beginsBar: boolean;
  /** Index of its time through a line. */
  readonly go: number;
}

interface Go {
  readonly name: string;
  /** s a beat, from the run's mean tempo. */
  readonly period: number;
  /** Even times that are known by beats from the start of the go, in order. */
  readonly known: { readonly position: number; readonly time: number }[];
  readonly barBeats: Set<number>;
  beats: number;
}

/**
 * The beats of the graded runs, each where it evenly stands at the tempo just then: a stroke's time less its deviation,
 * straight lines between the strokes, the run's own tempo before the first and behind the last. One time through a line
 * without a break is a go.
 */
export function evenBeats(result: TakeResult): { beats: EvenBeat[]; goes: string[] } {
  const goes = playedGoes(result).filter(({ known }) => known.length > 0);
  const starts = goes.map((go) => timeAt(go, 0));
  const beats = goes.flatMap((go, index) => {
    const next = starts[index + 1] ?? Number.POSITIVE_INFINITY;
    return Array.from({ length: go.beats }, (_, beat): EvenBeat => {
      const from = timeAt(go, beat);
      const end = timeAt(go, beat + 1);
      // The last beat ends where the next go begins, if that goes on in time.
      const to = beat === go.beats - 1 && Math.abs(next - end) < go.period / 2 ? next : end;
      return { from, to, beginsBar: go.barBeats.has(beat), go: index };
    });
  });
  return {
    beats: beats.filter(({ from, to }) => from >= 0 && to > from).sort((a, b) => a.from - b.from),
    goes: goes.map(({ name }) => name),
  };
}

function playedGoes(result: TakeResult): Go[] {
  const { slots, segments, strokes, sheet } = result;
  const goes: Go[] = [];
  for (const { firstSlot, lastSlot, state, bpm } of segments) {
    if (state !== 'graded') continue;
    let last = '';
    let bar = -1;
    for (let slot = firstSlot; slot <= lastSlot && slot < slots.line.length; slot++) {
      const [line, repeat, beat] = [slots.line[slot]!, slots.repeat[slot]!, slots.beat[slot]!];
      if (`${line} ${repeat}` !== last) {
        last = `${line} ${repeat}`;
        bar = -1;
        const name = `${sheet.lines.length > 1 ? `line ${line + 1}, ` : ''}time ${repeat + 1}`;
        goes.push({ name, period: 60 / bpm, known: [], barBeats: new Set(), beats: 0 });
      }
      const go = goes.at(-1)!;
      go.beats = Math.max(go.beats, beat + 1);
      if (slots.bar[slot] !== bar) go.barBeats.add(beat);
      bar = slots.bar[slot]!;
      const stroke = slots.stroke[slot] ?? null;
      const deviation = stroke === null ? null : (strokes.deviationMs[stroke] ?? null);
      if (stroke === null || deviation === null || slots.grace[slot]) continue;
      const position = beat + (slots.partial[slot]! - 1) / slots.divisions[slot]!;
      go.known.push({ position, time: strokes.time[stroke]! - deviation / 1000 });
    }
  }
  return goes;
}

function timeAt({ known, period }: Go, position: number): number {
  const after = known.findIndex((place) => place.position >= position - 1e-9);
  if (after === -1) return known.at(-1)!.time + (position - known.at(-1)!.position) * period;
  const right = known[after]!;
  const left = known[after - 1];
  if (left === undefined) return right.time - (right.position - position) * period;
  const share = (position - left.position) / (right.position - left.position);
  return left.time + share * (right.time - left.time);
}
