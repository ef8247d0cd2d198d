import { extent } from '../stats/extent.ts';
import type { TakeResult } from './take-result.ts';

/** Where parts of a document contradict each other: the place of the first, and what is wrong there. */
interface InnerFault {
  readonly path: string;
  readonly fault: string;
}

/** Beats of a line, our judgement: far past what can be written, and still drawn at once. */
const mostBeats = 10_000;

type Column = readonly unknown[];
type Columns = Readonly<Record<string, Column>>;

function unequal(path: string, columns: Columns): InnerFault | null {
  const [first, ...others] = Object.entries(columns);
  const odd = others.find(([, column]) => column.length !== first![1].length);
  return odd
    ? {
        path: `${path}/${odd[0]}`,
        fault: `has ${odd[1].length} entries, ${first![0]} has ${first![1].length}`,
      }
    : null;
}

/** The first index that points past a list of `count`. */
function past(
  path: string,
  indices: readonly (number | null | undefined)[],
  count: number,
): InnerFault | null {
  const at = indices.findIndex((index) => index !== null && index !== undefined && index >= count);
  return at < 0 ? null : { path: `${path}/${at}`, fault: `points past the last of ${count}` };
}

function firstOf(checks: readonly (() => InnerFault | null)[]): InnerFault | null {
  for (const check of checks) {
    const found = check();
    if (found !== null) return found;
  }
  return null;
}

/**
 * What a schema can't say of a take result: columns are of equal length, indices point at something, strokes are in
 * order, bounds in order. Null where all of it holds; time in proportion to the document.
 *
 * @example innerFault({ ...result, strokes: { ...result.strokes, slot: [] } }) // { path: '/strokes/slot', fault: 'has 0 entries, time has 72' }
 */
export function innerFault(result: TakeResult): InnerFault | null {
  const { strokes, slots, segments, tempo, measures, scores, advice, sheet, breaking, model } = result;
  const [strokeCount, slotCount, lineCount] = [strokes.time.length, slots.line.length, sheet.lines.length];
  const scopeLines = (list: readonly { readonly scope: { readonly line?: number } }[]) =>
    list.map(({ scope }) => scope.line);
  return firstOf([
    () => unequal('/strokes', strokes),
    () => unequal('/slots', slots),
    () => unequal('/tempo', tempo),
    () => past('/strokes/slot', strokes.slot, slotCount),
    () => past('/slots/stroke', slots.stroke, strokeCount),
    () => past('/slots/line', slots.line, lineCount),
    () => past('/tempo/segment', tempo.segment, segments.length),
    () =>
      past(
        '/segments',
        segments.map(({ lastSlot }) => lastSlot),
        slotCount,
      ),
    () => past('/measures', scopeLines(measures), lineCount),
    () => past('/model/measures', scopeLines(model?.measures ?? []), lineCount),
    () =>
      past(
        '/breaking',
        (breaking ?? []).flatMap(({ lines }) => lines),
        lineCount,
      ),
    () =>
      past(
        '/advice',
        advice.map((one) => extent(one.strokes).most),
        strokeCount,
      ),
    () =>
      past(
        '/scores',
        (scores?.dimensions ?? []).flatMap((one) => scopeLines(one.measures)),
        lineCount,
      ),
    () => pastRepeats(result),
    () => past('/slots/beat', slots.beat, mostBeats),
    () => past('/slots/bar', slots.bar, mostBeats),
    () => disorder('/strokes/time', strokes.time),
    () => disorder('/slots/line', slots.line),
    () => {
      const at = segments.findIndex(({ firstSlot, lastSlot }) => firstSlot > lastSlot);
      return at < 0 ? null : { path: `/segments/${at}`, fault: 'ends before it begins' };
    },
    () => {
      const at = measures.findIndex(
        ({ outcome }) =>
          outcome.state === 'measured' &&
          (!(outcome.low <= outcome.high) || outcome.pointsAt.some((stroke) => stroke >= strokeCount)),
      );
      return at < 0
        ? null
        : {
            path: `/measures/${at}`,
            fault: 'has bounds the wrong way round, or points past the last stroke',
          };
    },
  ]);
}

function disorder(path: string, values: readonly number[]): InnerFault | null {
  const at = values.findIndex((value, i) => i > 0 && value < values[i - 1]!);
  return at < 0 ? null : { path: `${path}/${at}`, fault: 'is out of order' };
}

/** The first slot in a repeat that its line doesn't have. */
function pastRepeats({ slots, sheet }: TakeResult): InnerFault | null {
  const at = slots.repeat.findIndex((repeat, i) => repeat >= sheet.lines[slots.line[i]!]!.repeats);
  return at < 0 ? null : { path: `/slots/repeat/${at}`, fault: 'is past the repeats of its line' };
}
