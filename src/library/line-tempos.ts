import type { TakeResult } from '../core/result/take-result.ts';
import { median } from '../core/stats/median.ts';

/**
 * The tempo at which each line was played, BPM: the median of the local tempo along it; null for a line that wasn't
 * played.
 *
 * @example lineTempos(result) // [100.4, 99.8]
 */
export function lineTempos({ sheet, slots, strokes, tempo }: TakeResult): readonly (number | null)[] {
  const played = slots.stroke
    .flatMap((stroke, slot) =>
      stroke === null ? [] : [{ at: strokes.time[stroke]!, line: slots.line[slot]! }],
    )
    .sort((a, b) => a.at - b.at);
  const found: number[][] = sheet.lines.map(() => []);
  let next = 0;
  tempo.time.forEach((time, index) => {
    while (next < played.length && played[next]!.at <= time) next++;
    const line = played[Math.max(0, next - 1)]?.line;
    if (line !== undefined) found[line]?.push(tempo.bpm[index]!);
  });
  return found.map((bpms) => (bpms.length === 0 ? null : median(bpms)));
}
