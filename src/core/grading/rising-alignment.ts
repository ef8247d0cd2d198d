import { type AlignQuestion, alignTake } from '../alignment/align-take.ts';
import type { Alignment } from '../alignment/alignment.ts';
import { risingLines } from '../scoring/breaking/rising-lines.ts';
import type { WorkTold } from '../signal/work-told.ts';

/**
 * A run this far off the tempo of its line was likely another line of the same exercise, share: half way to the next
 * tempo, and never more than this. Our judgement.
 */
const otherTempo = 0.035;

/** For each line how far off its tempo a run may be. */
function allowances({ sheet }: AlignQuestion): number[] {
  const logs = sheet.lines.map(({ bpm }) => Math.log(bpm ?? 1));
  return logs.map((own, i) => {
    const steps = [logs[i - 1], logs[i + 1]].flatMap((next) =>
      next === undefined ? [] : [Math.abs(next - own)],
    );
    return Math.min(otherTempo, ...steps.filter((step) => step > 0).map((step) => step / 2));
  });
}

/** Matched strokes in runs at their lines' tempos, less those in runs at others; and how many those are. */
function fit(
  question: AlignQuestion,
  { segments, matches }: Alignment,
): { readonly at: number; readonly off: number } {
  const { slots, sheet } = question;
  const allowed = allowances(question);
  const counts = { at: 0, off: 0 };
  for (const { segment, slot } of matches) {
    const { state, period } = segments[segment]!;
    const { line } = slots[slot]!;
    const asked = sheet.lines[line]!.bpm;
    if (state !== 'graded' || asked === null) continue;
    counts[Math.abs(Math.log(60 / period / asked)) < allowed[line]! ? 'at' : 'off'] += 1;
  }
  return counts;
}

/**
 * Lays a take on its slots. Where one exercise stands on the sheet at tempos that rise, its lines differ in nothing but
 * tempo, and a take that breaks down before the end may look like one that began with a later line: if runs lie on
 * lines of other tempos, fewer lines from the start are tried as well, and the tempos decide.
 *
 * @example risingAlignment({ slots, sheet, strokes, click: null }).matches.length
 */
export function risingAlignment(question: AlignQuestion, tell?: WorkTold): Alignment {
  const laid = alignTake(question, tell);
  const { slots, sheet } = question;
  const rising = risingLines(sheet.lines);
  const whole = fit(question, laid);
  if (rising.length === 0 || whole.off === 0) return laid;
  let best = { laid, gain: whole.at - whole.off };
  for (const line of rising.flat().slice(0, -1).toReversed()) {
    const shorter = {
      ...question,
      sheet: { ...sheet, lines: sheet.lines.slice(0, line + 1) },
      slots: slots.filter((slot) => slot.line <= line),
    };
    const tried = alignTake(shorter);
    const { at, off } = fit(shorter, tried);
    if (at - off > best.gain) best = { laid: tried, gain: at - off };
  }
  return best.laid;
}
