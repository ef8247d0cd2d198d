import { median } from '../../stats/median.ts';
import { clicksHeard, outOfClicks } from './clicks-heard.ts';
import type { DueLine } from './due-lines.ts';
import { type LineHeld, lineHeld } from './line-held.ts';

/** Where a player broke down: in which line, and how. */
export interface Breakdown {
  readonly line: number;
  /** Strokes stopped; had no place in the beat any more; or most of them were missing. */
  readonly why: 'stopped' | 'off-place' | 'missing';
}

/** A take so far; times are s of the click track. */
export interface Course {
  readonly lines: readonly DueLine[];
  readonly countIn: readonly number[];
  /** All clicks that sound. */
  readonly clicks: readonly number[];
  /** The lines that are over; null where nothing can be told. */
  readonly judged: readonly (LineHeld | null)[];
  readonly broke: Breakdown | null;
  /** The microphone hears the click, and that covers most strokes of most lines: nothing can be judged. */
  readonly covered: boolean;
}

/** Under both a line has lost its places: that figure, and that share of the lines before it. See `reports/breakdown.md`. */
const lostUnder = 0.62;
const lostShare = 0.74;

/** Strokes of a line below which its places say nothing. Our judgement. */
const fewest = 8;

/** Where every line before was heard so well, a line that is heard so badly was missed. See the same report. */
const heardWell = 0.85;
const heardBadly = 0.6;

/**
 * Without a stroke for so long a player has stopped: beats, seconds, and strokes that would have been heard, going by the
 * smallest share that was heard of a line so far, or by `unknownShare` before the first is over. Our judgement.
 */
const stoppedBeats = 4;
const stoppedSeconds = 2;
const stoppedStrokes = 6;
const unknownShare = 0.25;
const leastShare = 0.05;

/** Strokes told with less confidence are likely noise. Our judgement. */
const leastConfidence = 0.5;

/** Whether a stroke told live counts here. */
export const clearlyHeard = ({ confidence }: { readonly confidence: number }): boolean =>
  confidence >= leastConfidence;

/** s by which a stroke may be told later than it is heard: `liveDelaySeconds` and a block. */
const slack = 0.15;

/** Share of a line's strokes that must lie clear of clicks that are heard. Our judgement. */
const leastClear = 0.3;

/**
 * Goes on judging a take while it is played, each line as soon as it is over. A line has broken down where the strokes
 * heard have lost their places, in themselves and against the lines before; where most are missing although those
 * before were heard well; or where the player stopped. The first line is what later ones are held against, so that only
 * stopping ends it. It stops late rather than wrongly. Nothing needs to be known of the delay, which is found line by
 * line; where the microphone hears the click, what lies under clicks doesn't count. Hands and loudness aren't judged.
 * `strokes` are all so far, `heardTo` is how far was listened, s of the track.
 *
 * @example followCourse(course, strokes, 24).broke // { line: 5, why: 'off-place' }
 */
export function followCourse(course: Course, strokes: readonly number[], heardTo: number): Course {
  if (course.broke !== null) return course;
  const { lines, countIn, clicks } = course;
  const clickDelay = clicksHeard(countIn, strokes);
  const under = clickDelay === null ? [] : clicks.map((time) => time + clickDelay);
  const own = outOfClicks(strokes, under);
  const judged = [...course.judged];
  for (let line = judged.length; line < lines.length; line++) {
    const { to, step } = lines[line]!;
    const before = judged.filter((one) => one !== null);
    const near = before.at(-1)?.delay ?? clickDelay ?? 0;
    if (heardTo < to + Math.max(0, near) + step / 2 + slack) break;
    const clear = clickDelay === null ? lines[line]! : withoutClicks(lines[line]!, clicks);
    const held = clear === null ? null : lineHeld(clear, own, near);
    judged.push(held);
    const why = held === null ? null : whyBroken(held, before);
    if (why === null) continue;
    const quiet = heardTo - slack - (own.at(-1) ?? heardTo);
    const stopped = why === 'missing' && quiet > stoppedSeconds / 2;
    return { ...course, judged, broke: { line, why: stopped ? 'stopped' : why } };
  }
  const told = judged.filter((one) => one !== null);
  const now = heardTo - slack - Math.max(0, told.at(-1)?.delay ?? clickDelay ?? 0);
  const last = own.at(-1);
  // A line that wasn't played to its end tells nothing of how well strokes are heard.
  const shares = judged.flatMap((one, i) => {
    const { to, beatSeconds } = lines[i]!;
    return last === undefined || last < to - beatSeconds
      ? []
      : [Math.max(leastShare, one?.heard ?? leastShare)];
  });
  const share = Math.min(...(shares.length === 0 ? [unknownShare] : shares), 1);
  const due = lines.map((line) => (clickDelay === null ? line.due : outOfClicks(line.due, clicks)));
  const line = stoppedIn(lines, due, last, now, stoppedStrokes / share);
  const hidden = lines.filter((one, i) => due[i]!.length < leastClear * one.due.length);
  const covered = hidden.length > lines.length / 2;
  return { ...course, judged, covered, broke: line === null ? null : { line, why: 'stopped' } };
}

function whyBroken(
  { strokes, places, heard }: LineHeld,
  before: readonly LineHeld[],
): Breakdown['why'] | null {
  if (before.length === 0) return null;
  const usual = median(before.map((one) => one.places));
  if (strokes >= fewest && places < lostUnder && places < lostShare * usual) return 'off-place';
  const well = before.every((one) => one.heard >= heardWell);
  return well && heard < heardBadly ? 'missing' : null;
}

/** A line without the strokes that lie under clicks; null where too little of it is left. */
function withoutClicks(line: DueLine, clicks: readonly number[]): DueLine | null {
  const due = outOfClicks(line.due, clicks);
  return due.length < leastClear * line.due.length ? null : { ...line, due };
}

/** The line in which a player stopped who had begun: that of the middle one of the strokes that are missing since. */
function stoppedIn(
  lines: readonly DueLine[],
  due: readonly (readonly number[])[],
  last: number | undefined,
  now: number,
  enough: number,
): number | null {
  if (last === undefined || last < lines[0]!.from) return null;
  const missing = due.flatMap((times, line) =>
    times.flatMap((time) => (time > last + 0.1 && time < now ? [{ time, line }] : [])),
  );
  const middle = missing[missing.length >> 1];
  if (middle === undefined || missing.length < enough) return null;
  const seconds = Math.max(stoppedSeconds, stoppedBeats * lines[middle.line]!.beatSeconds);
  return missing.at(-1)!.time - last >= seconds ? middle.line : null;
}
