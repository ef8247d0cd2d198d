import type { TakeResult } from '../core/result/take-result.ts';

/** Neighbours further apart than this many of the wider partials have a rest between them. */
const adjacent = 1.5;

interface Neighbours {
  /** Slots right before and right after, grace notes left out; null at a rest or an end of a line. */
  readonly before: number | null;
  readonly after: number | null;
}

/**
 * The slots right before and after every slot that isn't a grace note, by index of the slot. A line that is repeated
 * without a rest goes on from its last slot to its first.
 */
export function mainNeighbours({ slots }: TakeResult): ReadonlyMap<number, Neighbours> {
  const main = slots.grace.flatMap((grace, i) => (grace ? [] : [i]));
  const beats = beatsOfLines({ slots });
  const next = main.map((slot, i) => {
    const other = main[i + 1];
    if (other === undefined || slots.line[other] !== slots.line[slot]) return null;
    const turned = slots.repeat[other] === slots.repeat[slot] ? 0 : beats.get(slots.line[slot]!)!;
    const gap = slots.position[other]! - slots.position[slot]! + turned;
    return gap * Math.min(slots.divisions[slot]!, slots.divisions[other]!) <= adjacent ? other : null;
  });
  return new Map(
    main.map((slot, i) => [
      slot,
      { before: i > 0 && next[i - 1] === slot ? main[i - 1]! : null, after: next[i]! },
    ]),
  );
}

/** Beats of one time through each line, by the line's index. */
export function beatsOfLines({ slots }: Pick<TakeResult, 'slots'>): ReadonlyMap<number, number> {
  const beats = new Map<number, number>();
  slots.line.forEach((line, i) => {
    beats.set(line, Math.max(beats.get(line) ?? 0, slots.beat[i]! + 1));
  });
  return beats;
}
