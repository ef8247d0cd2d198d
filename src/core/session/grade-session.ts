import type { Sheet } from '../exercise/sheet.ts';
import { type GradeOptions, gradeHearing } from '../grading/grade-hearing.ts';
import { hearStrokes } from '../onsets/hear-strokes.ts';
import { steady } from '../scoring/rubrics/steady.ts';
import { cutSource, type Stretch } from '../signal/cut-source.ts';
import type { Source } from '../signal/source.ts';
import { cutHearing } from './cut-hearing.ts';
import { playingStretches } from './playing-stretches.ts';
import { type FoundLine, recogniseLines } from './recognise-lines.ts';
import { type SessionResult, type SessionTake, sessionResultVersion } from './session-result.ts';
import { summariseSession } from './summarise-session.ts';
import { tellAlike } from './tell-alike.ts';

/** Sound kept round a take's first and last stroke, s, where no other take is. */
const margin = { before: 1, after: 1.5 };
/** A take that follows another without a gap begins so long before its first stroke, s. */
const close = 0.05;

/**
 * Grades a practice session in one recording: it is heard once, cut at the pauses, each part recognised as lines of
 * the sheet in whatever order, and each playing of a line graded as a take of its own. Playing that fits no line is
 * listed, talk is ignored. Time: about linear in length; a `GradeOptions.name` is the recording's.
 *
 * @example gradeSession(source, sheet, { name: 'monday.wav' }).summary.lines[2]!.plays.length // → times line 3 was played
 */
export function gradeSession(source: Source, sheet: Sheet, options: GradeOptions = {}): SessionResult {
  const { name = 'recording', sha256 = null, rubric = steady, tell, ...each } = options;
  const hearing = hearStrokes(source, tell);
  const recognised: FoundLine[] = [];
  const unrecognised: Stretch[] = [];
  const stretches = playingStretches(hearing.sounds);
  for (const [i, { from, to }] of stretches.entries()) {
    tell?.('laying', i / stretches.length);
    const begin = Math.max(0, from - margin.before);
    const lines = recogniseLines(sheet, cutHearing(hearing, { from: begin, to: to + margin.after }));
    recognised.push(...lines.map((one) => ({ ...one, from: one.from + begin, to: one.to + begin })));
    if (lines.length === 0) unrecognised.push({ from, to });
  }
  const found = tellAlike(sheet, recognised);
  const duration = source.length / source.sampleRate;
  const takes = found.map(({ line, repeats, from, to }, i): SessionTake => {
    tell?.('measuring', i / found.length);
    const before = found[i - 1]?.to ?? 0;
    const after = found[i + 1]?.from ?? duration;
    const part = {
      from: Math.max(0, from - margin.before, Math.min(before + close, from - close)),
      to: Math.min(duration, to + margin.after, after - close),
    };
    const played = { title: sheet.title, lines: [{ ...sheet.lines[line]!, repeats, restBeats: 0 }] };
    const result = gradeHearing(cutSource(source, part), cutHearing(hearing, part), played, {
      ...each,
      name,
      sha256,
      rubric,
    });
    return { line, repeats, ...part, result };
  });
  return {
    schema: 'evenhand-session-result',
    version: sessionResultVersion,
    recording: { name, sha256, duration },
    sheet: { title: sheet.title, lines: sheet.lines.map(({ beats: _, ...line }) => line) },
    takes,
    unrecognised,
    summary: summariseSession(sheet, takes, rubric),
  };
}
