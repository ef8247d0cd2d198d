import { layOut } from '../../exercise/lay-out.ts';
import type { Sheet } from '../../exercise/sheet.ts';
import { extent } from '../../stats/extent.ts';
import type { ClickPlan } from '../click-plan.ts';

/** When the strokes of one line are due; all times s of the click track. */
export interface DueLine {
  /** Main strokes, in order. */
  readonly due: readonly number[];
  /** Whether each of them is accented. */
  readonly accents: readonly boolean[];
  /** Grace notes that go with them. */
  readonly graces: number;
  readonly from: number;
  readonly to: number;
  readonly beatSeconds: number;
  /** The shortest time between two of its strokes, at most a beat. */
  readonly step: number;
}

/**
 * The lines of a sheet on its click track; every line has a tempo.
 *
 * @example dueLines(sheet, planClicks(sheet, plainClick))[0].due[0] // 2: after a bar of four beats at 120
 */
export function dueLines(sheet: Sheet, { firstBeat }: ClickPlan): DueLine[] {
  const slots = layOut(sheet);
  let from = firstBeat;
  return sheet.lines.map(({ bpm, beats, repeats, restBeats }, line) => {
    const beatSeconds = 60 / (bpm ?? 90);
    const own = slots.filter((slot) => slot.line === line && slot.time !== null);
    const mains = own.filter(({ grace }) => !grace);
    const due = mains.map(({ time }) => firstBeat + time!);
    const to = from + repeats * beats.length * beatSeconds;
    const steps = due.slice(1).map((time, i) => time - due[i]!);
    const described = {
      due,
      accents: mains.map(({ accent }) => accent),
      graces: own.length - due.length,
      from,
      to,
      beatSeconds,
      step: Math.min(beatSeconds, extent(steps).least),
    };
    from = to + restBeats * beatSeconds;
    return described;
  });
}
