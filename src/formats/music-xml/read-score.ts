import { parseXml, type XmlElement } from '@rgrove/parse-xml';
import { type Metre, readBar, usualMetre } from './read-bar.ts';
import type { Score, ScoreBar, ScoreFault } from './score.ts';
import { childrenOf, elementAt, textAt } from './xml-tree.ts';

type ScoreOutcome =
  | { readonly ok: true; readonly score: Score }
  | { readonly ok: false; readonly fault: ScoreFault };

/** Text longer than this is no exercise; a written-out bar takes about 2,000 characters. Our judgement. */
const mostCharacters = 4_000_000;

/**
 * Reads the bars of a MusicXML score (partwise): the part with most unpitched notes, and of that the voice with most
 * notes. Nothing outside the text is loaded and no entity of its own is resolved. Never throws for what a text may
 * hold.
 */
export function readScore(text: string): ScoreOutcome {
  const failed = (fault: ScoreFault): ScoreOutcome => ({ ok: false, fault });
  if (text.length > mostCharacters)
    return failed({ code: 'score-too-large', facts: { characters: text.length, most: mostCharacters } });
  let root: XmlElement | null;
  try {
    root = parseXml(text).root;
  } catch (error) {
    const reason = error instanceof Error ? error.message.split('\n')[0]! : String(error);
    return failed({ code: 'score-unreadable', facts: { reason: reason.slice(0, 200) } });
  }
  if (root?.name === 'score-timewise') return failed({ code: 'score-timewise', facts: {} });
  if (root?.name !== 'score-partwise')
    return failed({ code: 'score-not-music', facts: { root: (root?.name ?? '').slice(0, 60) } });

  const parts = childrenOf(root, 'part').toSorted((a, b) => strokesIn(b) - strokesIn(a));
  const part = parts[0];
  if (part === undefined || strokesIn(part) === 0)
    return failed({ code: 'score-without-strokes', facts: {} });
  const voices = voicesOf(part);
  const bars: ScoreBar[] = [];
  let metre: Metre = usualMetre;
  let chords = 0;
  for (const [i, measure] of childrenOf(part, 'measure').entries()) {
    const read = readBar(measure, metre, voices[0]!);
    if (read.hasEnding) return failed({ code: 'score-endings', facts: { bar: i + 1 } });
    metre = read.metre;
    chords += read.chords;
    bars.push(read.bar);
  }
  const others = parts.filter((one) => strokesIn(one) > 0).length - 1;
  const title = textAt(root, 'work', 'work-title') || textAt(root, 'movement-title');
  return {
    ok: true,
    score: {
      title,
      bars,
      notes: [
        ...(others > 0 ? [{ code: 'score-other-parts', facts: { parts: others } } as const] : []),
        ...(voices.length > 1
          ? [{ code: 'score-other-voices', facts: { voices: voices.length - 1 } } as const]
          : []),
        ...(chords > 0 ? [{ code: 'score-chords', facts: { notes: chords } } as const] : []),
      ],
    },
  };
}

const notesOf = (part: XmlElement) => childrenOf(part, 'measure').flatMap((one) => childrenOf(one, 'note'));

/** Notes of a part that may be strokes; a pitched part counts only where there is no other. */
function strokesIn(part: XmlElement): number {
  const notes = notesOf(part).filter((note) => elementAt(note, 'rest') === undefined);
  const unpitched = notes.filter((note) => elementAt(note, 'unpitched') !== undefined).length;
  return unpitched > 0 ? unpitched : notes.length / 1e6;
}

/** Voices of a part, the one with most strokes first. */
function voicesOf(part: XmlElement): string[] {
  const counts = new Map<string, number>();
  for (const note of notesOf(part)) {
    if (elementAt(note, 'rest') !== undefined) continue;
    const voice = textAt(note, 'voice') || '1';
    counts.set(voice, (counts.get(voice) ?? 0) + 1);
  }
  return [...counts].toSorted((a, b) => b[1] - a[1]).map(([voice]) => voice);
}
