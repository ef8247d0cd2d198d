import { barOfBeats, longestBar } from '../exercise/bars.ts';
import type { Sheet, SheetLine } from '../exercise/sheet.ts';
import type { ClickOptions, ClickPlan, PlannedClick } from './click-plan.ts';
import { silentBars } from './silent-bars.ts';

/** Beats per minute of a line that leaves its tempo open. Our judgement. */
export const openTempo = 90;

/** A beat of a sheet in time: whether a bar begins on it, and how long it lasts. */
interface Beat {
  readonly bar: boolean;
  readonly seconds: number;
}

const secondsPerBeat = ({ bpm }: SheetLine) => 60 / (bpm ?? openTempo);

/** Every beat of a line's repeats and of its rest. Without bar lines, bars are counted on over the repeats. */
function beatsOf(line: SheetLine): Beat[] {
  const seconds = secondsPerBeat(line);
  const barred = longestBar(line.beats) !== null;
  const bars = barOfBeats(line.beats, line.beatsInBar);
  const played = Array.from({ length: line.repeats * line.beats.length }, (_, i) => {
    const inLine = i % line.beats.length;
    const begins = inLine === 0 || bars[inLine] !== bars[inLine - 1];
    return { bar: barred ? begins : i % line.beatsInBar === 0, seconds };
  });
  const rest = Array.from({ length: Math.ceil(line.restBeats) }, (_, i) => ({
    bar: i % line.beatsInBar === 0,
    seconds: seconds * Math.min(1, line.restBeats - i),
  }));
  return [...played, ...rest];
}

/**
 * The clicks of a sheet: counted in at the first line's tempo, then on every beat at each line's own, rests between
 * lines included and the last line's left out. A bar begins where the notation has a bar line, otherwise every
 * `beatsInBar` beats. While silence is asked for, whole bars don't sound, and what doesn't sound is still on the plan.
 * Times are multiples of the beat from the line's start, not sums, so that an hour has no drift.
 *
 * @example planClicks(sheet, plainClick).firstBeat // 2 for one bar of four beats at 120
 */
export function planClicks({ lines }: Sheet, options: ClickOptions): ClickPlan {
  const { sound, bell, silence } = options;
  const parts = Math.max(1, Math.round(options.subdivisions));
  const clicks: PlannedClick[] = [];
  let time = 0;
  const [first] = lines;
  if (first !== undefined) {
    const seconds = secondsPerBeat(first);
    const counted = options.countInBeats ?? first.beatsInBar;
    for (let beat = 0; beat < counted; beat++) {
      clicks.push({ time: beat * seconds, kind: 'count-in', audible: true });
    }
    time = counted * seconds;
  }
  const firstBeat = time;
  const isSilent = silentBars(silence);
  let bar = -1;
  lines.forEach((line, i) => {
    const last = i === lines.length - 1;
    const beats = beatsOf(last ? { ...line, restBeats: 0 } : line);
    const from = time;
    const seconds = secondsPerBeat(line);
    beats.forEach((beat, index) => {
      if (beat.bar) bar += 1;
      const at = from + index * seconds;
      const audible = !isSilent(bar);
      clicks.push({ time: at, kind: beat.bar ? 'bar' : 'beat', audible });
      for (let part = 1; part < parts; part++) {
        const between = (part / parts) * seconds;
        if (between < beat.seconds) clicks.push({ time: at + between, kind: 'subdivision', audible });
      }
    });
    time = from + beats.slice(0, -1).length * seconds + (beats.at(-1)?.seconds ?? 0);
  });
  return { clicks, sound, bell, firstBeat, duration: time };
}
