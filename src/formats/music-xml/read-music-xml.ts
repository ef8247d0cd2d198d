import { limits } from '../../core/exercise/limits.ts';
import { lineFromText } from '../../core/exercise/line-from-text.ts';
import { type LineSettings, readSetting, settingRanges } from '../../core/exercise/line-settings.ts';
import type { Beat, Hand, Note, Sheet, SheetLine } from '../../core/exercise/sheet.ts';
import { writeNotation } from '../../core/exercise/write-notation.ts';
import { readScore } from './read-score.ts';
import type { ScoreBar, ScoreEvent, ScoreFault, ScoreNote } from './score.ts';

type MusicXmlOutcome =
  | { readonly ok: true; readonly sheet: Sheet; readonly notes: readonly ScoreNote[] }
  | { readonly ok: false; readonly fault: ScoreFault };

/** Share of a part that an onset may lie off it: programs round durations. Our judgement. */
const roundingShare = 0.02;

/**
 * A MusicXML score as a sheet. A line begins at a rehearsal mark, at repeat signs, after a double bar line and after
 * bars of rest; bars of rest become the line's rest; repeat signs become repeats. Each beat is divided into the fewest
 * equal parts, at most twelve, that hold its notes and rests; in 6/8, 9/8 and 12/8 a beat is a dotted one. Where no
 * sticking is written the hands alternate, and a grace note comes from the other hand; that is told in `notes`. Never
 * throws for what a text may hold.
 *
 * @example readMusicXml(text) // { ok: true, sheet: { title: 'Week 7', lines: [...] }, notes: [] }
 */
export function readMusicXml(text: string): MusicXmlOutcome {
  const read = readScore(text);
  if (!read.ok) return read;
  const { bars, title, notes } = read.score;
  const lines: SheetLine[] = [];
  let added = 0;
  let tempo: number | null = null;
  for (const group of groupsOf(bars)) {
    tempo = group.tempo ?? tempo;
    const sticking = { last: 'L' as Hand, added: 0 };
    const beats: Beat[] = [];
    for (const { bar, number } of group.bars) {
      const own = beatsOf(bar, sticking);
      if (own === null) return { ok: false, fault: { code: 'score-bar-uneven', facts: { bar: number } } };
      beats.push(...own.map((partials, i) => ({ partials, barBefore: i === 0 && beats.length > 0 })));
    }
    added += sticking.added;
    const first = group.bars[0]!;
    const perMinute = tempo === null ? null : tempo / first.bar.beatQuarters;
    const line = lineFromText(writeNotation(beats), settingsOf(group, beats, perMinute));
    if (!line.ok)
      return {
        ok: false,
        fault: { code: 'score-line-unwritable', facts: { bar: first.number, reason: line.fault.code } },
      };
    lines.push(line.line);
  }
  if (lines.length === 0) return { ok: false, fault: { code: 'score-without-strokes', facts: {} } };
  if (lines.length > limits.sheetLines)
    return {
      ok: false,
      fault: { code: 'score-line-unwritable', facts: { bar: 1, reason: 'too-many-lines' } },
    };
  const told: ScoreNote[] =
    added > 0 ? [...notes, { code: 'score-sticking-added', facts: { strokes: added } }] : [...notes];
  return { ok: true, sheet: { title: title.slice(0, limits.nameCharacters), lines }, notes: told };
}

interface Group {
  readonly bars: { readonly bar: ScoreBar; readonly number: number }[];
  repeats: number;
  restBeats: number;
  tempo: number | null;
}

const silent = ({ events }: ScoreBar) => events.every(({ stroke }) => stroke === null);

/** Bars that belong to one line; bars of rest are added to the line before them. */
function groupsOf(bars: readonly ScoreBar[]): Group[] {
  const groups: Group[] = [];
  let open: Group | null = null;
  bars.forEach((bar, i) => {
    if (silent(bar) && !goesOn(bars, i, open !== null)) {
      const last = groups.at(-1);
      if (last !== undefined) last.restBeats += bar.quarters / bar.beatQuarters;
      open = null;
      return;
    }
    if (open === null || bar.begins || bar.tempo !== null) {
      open = { bars: [], repeats: 1, restBeats: 0, tempo: bar.tempo };
      groups.push(open);
    }
    open.bars.push({ bar, number: i + 1 });
    if (bar.times !== null) open.repeats = bar.times;
    if (bar.times !== null || bar.ends) open = null;
  });
  return groups;
}

/**
 * Whether a bar of rest belongs to a line: it begins one that has strokes, or stands in one that is marked to go on, by
 * a sign at its end. Elsewhere a bar of rest is a pause between lines.
 */
function goesOn(bars: readonly ScoreBar[], from: number, within: boolean): boolean {
  const begins = bars[from]!.begins;
  if (!begins && !within) return false;
  for (let i = from; i < bars.length && (i === from || !bars[i]!.begins); i++) {
    const { times, ends } = bars[i]!;
    if (begins && !silent(bars[i]!)) return true;
    if (times !== null || ends) return within && !begins;
  }
  return false;
}

function settingsOf(group: Group, beats: readonly Beat[], bpm: number | null): Partial<LineSettings> {
  const words = group.bars.flatMap(({ bar }) => bar.words);
  const within = (value: number, { least, most }: { least: number; most: number }) =>
    Math.min(most, Math.max(least, value));
  let settings: Partial<LineSettings> = {
    repeats: within(group.repeats, settingRanges.times),
    restBeats: within(group.restBeats, settingRanges.rest),
    ...(bpm === null ? {} : { bpm: within(Math.round(bpm * 100) / 100, settingRanges.tempo) }),
    ...(beats.some(({ barBefore }) => barBefore) ? {} : { beatsInBar: beats.length }),
  };
  for (const text of words) {
    const [, word, value] = /^(lead|ratio):\s*(.+)$/i.exec(text) ?? [];
    if (word === undefined || value === undefined) {
      const label = text.slice(0, limits.nameCharacters);
      if (label !== '' && settings.label === undefined) settings = { ...settings, label };
      continue;
    }
    const read = readSetting(word.toLowerCase() as 'lead' | 'ratio', value);
    if (read.ok) settings = { ...settings, ...read.settings };
  }
  return settings;
}

/** A bar's beats as equal parts, or null where a beat can't be divided so. */
function beatsOf(
  { events, quarters, beatQuarters }: ScoreBar,
  sticking: { last: Hand; added: number },
): (Note | null)[][] | null {
  const count = Math.round(quarters / beatQuarters);
  if (!(count >= 1 && count <= limits.beatsInNotation)) return null;
  if (Math.abs(count * beatQuarters - quarters) > roundingShare * beatQuarters) return null;
  const beats: (Note | null)[][] = [];
  for (let beat = 0; beat < count; beat++) {
    const own = events
      .map((event) => ({ ...event, share: event.at / beatQuarters - beat }))
      .filter(({ share }) => share > -roundingShare / 2 && share < 1 - roundingShare / 2);
    const parts = partsFor(own.map(({ share }) => share));
    if (parts === null) return null;
    const partials = new Array<Note | null>(parts).fill(null);
    for (const { share, stroke } of own)
      if (stroke !== null) partials[Math.round(share * parts)] = noteOf(stroke, sticking);
    beats.push(partials);
  }
  return beats;
}

/** The fewest equal parts on which all shares of a beat fall. */
function partsFor(shares: readonly number[]): number | null {
  for (let parts = 1; parts <= limits.divisions; parts++)
    if (shares.every((share) => Math.abs(share * parts - Math.round(share * parts)) <= roundingShare))
      return parts;
  return null;
}

function noteOf(
  { hand, accent, buzz, grace }: NonNullable<ScoreEvent['stroke']>,
  sticking: { last: Hand; added: number },
): Note {
  const other = (of: Hand): Hand => (of === 'R' ? 'L' : 'R');
  if (hand === null) sticking.added += 1;
  const own = hand ?? other(sticking.last);
  sticking.last = own;
  return { hand: own, accent, buzz, grace: grace.slice(-limits.graceNotes).map((one) => one ?? other(own)) };
}
