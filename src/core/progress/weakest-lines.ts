import { holm } from '../stats/holm.ts';
import { mean } from '../stats/mean.ts';
import { normalCdf } from '../stats/normal-cdf.ts';
import { type LineFigure, type LineMark, lineDistance, lineMark, weighedFigures } from './line-mark.ts';

/** The newest playing of one line, with its figures by measure id; those that weren't measured are left out. */
export interface PlayedLine {
  readonly exerciseId: string;
  /** Untrusted. */
  readonly label: string;
  readonly takeId: string;
  /** Its place on the sheet of that take. */
  readonly place: number;
  readonly day: string;
  readonly bpm: number | null;
  /** Words for pad, sticks and device: loudness is held against lines with the same ones only. */
  readonly setUp: string;
  readonly figures: Readonly<Record<string, LineFigure>>;
}

export interface WeakLine extends PlayedLine {
  /** The figure that makes it weak. */
  readonly measure: string;
  /** What it is worth, 0 to 100, as in the score of a take. */
  readonly mark: LineMark;
  /** What the other lines are worth in it on average; null where there is nothing to hold it against. */
  readonly others: number | null;
  /** What it is likely worth, drawn towards the others as far as chance alone scatters lines; 95 %. */
  readonly likely: LineMark;
  /** Worse than the others on average, by more than chance would make any line of this lesson in one of twenty. */
  readonly apart: boolean;
}

interface Held extends Pick<WeakLine, 'measure' | 'mark' | 'others' | 'likely'> {
  readonly line: PlayedLine;
  /** Chance that a line as good as the others on average reads at most this good. */
  readonly p: number;
}

/** Chance of a false claim: common practice; and the normal distribution's 97.5 % point. */
const level = 0.05;
const z95 = 1.96;

/**
 * The lines that are least likely as good as the others, weakest first: every figure's distance from perfect is held
 * against the mean of the other lines', each with the half of its interval that faces the other side (variance
 * estimates recovered from intervals, Zou and Donner 2008; quoted from memory), and a line ranks by the figure that
 * speaks most against it. What stands apart is corrected over all lines and figures asked (Holm 1979). Drawing towards
 * the others takes the scatter between lines from the marks themselves (DerSimonian and Laird 1986; quoted from
 * memory).
 *
 * @example weakestLines(lines, 2).map(({ label, measure }) => [label, measure]) // [['Accent on 3', 'tap-spread'], …]
 */
export function weakestLines(lines: readonly PlayedLine[], count: number): readonly WeakLine[] {
  const held = weighedFigures.flatMap((figure) => {
    const measured = lines.flatMap((line) => {
      const own = line.figures[figure.id];
      return own === undefined ? [] : [{ line, mark: lineMark(figure.id, own) }];
    });
    return measured.map((one) => {
      const likes = figure.ofLevels ? measured.filter(({ line }) => line.setUp === one.line.setUp) : measured;
      return heldAgainst(
        figure.id,
        one,
        likes.filter(({ line }) => line !== one.line),
      );
    });
  });
  const corrected = holm(held.map(({ p }) => p));
  const worst = new Map<PlayedLine, number>();
  held.forEach((one, i) => {
    const at = worst.get(one.line);
    if (at === undefined || weaker(one, held[at]!) < 0) worst.set(one.line, i);
  });
  // In the order of the lines, so that those that are equally weak keep it.
  return lines
    .flatMap((line) => worst.get(line) ?? [])
    .toSorted((a, b) => weaker(held[a]!, held[b]!))
    .slice(0, count)
    .map((at) => {
      const { line, measure, mark, others, likely } = held[at]!;
      return { ...line, measure, mark, others, likely, apart: corrected[at]! < level };
    });
}

const weaker = (a: Held, b: Held) => a.p - b.p || a.mark.value - b.mark.value;

type Marked = { readonly line: PlayedLine; readonly mark: LineMark };

function heldAgainst(measure: string, { line, mark }: Marked, others: readonly Marked[]): Held {
  if (others.length === 0) return { line, measure, mark, others: null, likely: mark, p: 1 };
  const centre = mean(others.map((one) => one.mark.value));
  const error = errorOf(mark);
  const centreVariance = others.reduce((sum, one) => sum + errorOf(one.mark) ** 2, 0) / others.length ** 2;
  const between = betweenLines([mark, ...others.map((one) => one.mark)]);
  const own = between / (between + error ** 2);
  const value = centre + own * (mark.value - centre);
  const half = z95 * Math.sqrt(own * error ** 2 + (1 - own) ** 2 * centreVariance);
  const inside = (score: number) => Math.min(100, Math.max(0, score));
  const likely = { value, low: inside(value - half), high: inside(value + half) };
  return { line, measure, mark, others: centre, likely, p: chanceAsGood(measure, line, others) };
}

function chanceAsGood(measure: string, line: PlayedLine, others: readonly Marked[]): number {
  const own = lineDistance(measure, line.figures[measure]!);
  const theirs = others.map((one) => lineDistance(measure, one.line.figures[measure]!));
  const towards = (half: number) => Math.max(own.small, half / z95);
  const variance =
    towards(own.value - own.low) ** 2 +
    theirs.reduce((sum, { value, high }) => sum + towards(high - value) ** 2, 0) / theirs.length ** 2;
  return normalCdf((mean(theirs.map(({ value }) => value)) - own.value) / Math.sqrt(variance));
}

/** An interval of no length would make any difference certain. Points; our judgement. */
const leastError = 1;
const errorOf = ({ low, high }: LineMark) => Math.max(leastError, (high - low) / (2 * z95));

/** Variance between lines beyond the errors of their marks. */
function betweenLines(marks: readonly LineMark[]): number {
  const weights = marks.map((mark) => 1 / errorOf(mark) ** 2);
  const sum = weights.reduce((all, weight) => all + weight, 0);
  const centre = marks.reduce((all, { value }, i) => all + weights[i]! * value, 0) / sum;
  const scatter = marks.reduce((all, { value }, i) => all + weights[i]! * (value - centre) ** 2, 0);
  const squares = weights.reduce((all, weight) => all + weight ** 2, 0);
  return Math.max(0, (scatter - (marks.length - 1)) / (sum - squares / sum));
}
