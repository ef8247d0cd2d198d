import type { Alignment } from '../alignment/alignment.ts';
import type { Sheet } from '../exercise/sheet.ts';
import type { Slot } from '../exercise/slot.ts';
import type { Reason, TakeResult } from '../result/take-result.ts';

/** A tempo this far from the one asked is said aloud, as a share. Our judgement. */
const farOff = 0.12;

/** What the reader of a graded take must know about how the strokes were laid on the exercise. */
export function takeWarnings({
  sheet,
  slots,
  alignment,
  segments,
}: {
  readonly sheet: Sheet;
  readonly slots: readonly Slot[];
  readonly alignment: Alignment;
  readonly segments: TakeResult['segments'];
}): Reason[] {
  const warnings: Reason[] = [];
  const { doubt } = alignment;
  if (doubt !== null) warnings.push({ code: doubt.code, facts: { ...doubt.facts } });

  const graded = segments.filter((segment) => segment.state === 'graded');
  const reached = new Set<number>([...alignment.missed, ...(alignment.unheard ?? [])]);
  for (const match of alignment.matches) {
    if (alignment.segments[match.segment]!.state === 'graded') reached.add(match.slot);
  }
  const main = slots.filter((slot) => !slot.grace);
  const notReached = main.filter((slot) => !reached.has(slot.index)).length;
  if (notReached > 0) warnings.push({ code: 'part-not-played', facts: { notReached, wanted: main.length } });

  const given = segments.filter((segment) => segment.state === 'abandoned');
  if (given.length > 0) {
    warnings.push({
      code: 'runs-given-up',
      facts: { runs: given.length, from: given[0]!.from, to: given.at(-1)!.to },
    });
  }
  const surplus = segments.filter((segment) => segment.state === 'surplus');
  if (surplus.length > 0)
    warnings.push({ code: 'surplus-played', facts: { runs: surplus.length, from: surplus[0]!.from } });

  const longest = graded.toSorted((a, b) => b.lastSlot - b.firstSlot - (a.lastSlot - a.firstSlot))[0];
  if (longest) {
    const asked = sheet.lines[slots[longest.firstSlot]!.line]!.bpm;
    if (asked !== null && Math.abs(longest.bpm / asked - 1) > farOff) {
      warnings.push({ code: 'tempo-far-off', facts: { asked, played: longest.bpm } });
    }
  }
  return warnings;
}
