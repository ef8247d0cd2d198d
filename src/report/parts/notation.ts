import { counted } from '../../core/result/figures.ts';
import type { TakeResult } from '../../core/result/take-result.ts';

interface Note {
  readonly partial: number;
  readonly hand: 'R' | 'L';
  readonly accent: boolean;
  readonly buzz: boolean;
  /** Hands of the grace notes before it. */
  readonly grace: readonly string[];
}

interface Beat {
  readonly bar: number;
  readonly divisions: number;
  readonly notes: readonly Note[];
}

/** What of a result, or of a sheet before it is played, is drawn. */
interface DrawnSlots {
  readonly slots: Pick<
    TakeResult['slots'],
    'line' | 'repeat' | 'bar' | 'beat' | 'partial' | 'divisions' | 'hand' | 'accent' | 'grace' | 'buzz'
  >;
}

/** The beats of a line as it is played the first time, from the result's slots; beats of rest are kept. */
function beatsOf({ slots }: DrawnSlots, line: number): Beat[] {
  const beats: { bar: number; divisions: number; notes: Note[] }[] = [];
  let grace: string[] = [];
  slots.line.forEach((of, i) => {
    if (of !== line || slots.repeat[i] !== 0) return;
    const beat = slots.beat[i]!;
    while (beats.length <= beat) beats.push({ bar: beats.at(-1)?.bar ?? 0, divisions: 1, notes: [] });
    beats[beat]!.bar = slots.bar[i]!;
    beats[beat]!.divisions = slots.divisions[i]!;
    if (slots.grace[i]) {
      grace.push(slots.hand[i]!);
      return;
    }
    const note = {
      partial: slots.partial[i]!,
      hand: slots.hand[i]!,
      accent: slots.accent[i]!,
      buzz: slots.buzz[i]!,
    };
    beats[beat]!.notes.push({ ...note, grace });
    grace = [];
  });
  return beats;
}

/** Beats of a line that are drawn; a longer line is counted on. */
const beatsShown = 32;

const step = 22;
const edge = 16;
const line = 62;
const beam = 30;

/** Beams of a beat in equal parts, as music writes them: one for 2 and 3, two for 4 to 7, three for 8 and more. */
function beamCount(divisions: number): number {
  if (divisions === 1) return 0;
  if (divisions < 4) return 1;
  return divisions < 8 ? 2 : 3;
}

/**
 * A line of the exercise as small pictures, one a beat, so that they wrap on a narrow page: accents over the stems,
 * hands under the line, a bar line where a bar begins. Null where the result holds no slots of that line.
 */
export function notation(result: DrawnSlots, lineIndex: number): string | null {
  const beats = beatsOf(result, lineIndex);
  if (beats.length === 0) return null;
  const left = beats.length - beatsShown;
  const more = left > 0 ? `<p class="note">And ${counted(left, 'more beat')}.</p>` : '';
  const shown = beats.slice(0, beatsShown);
  const pictures = beatPictures(result, lineIndex).map(
    ({ width, signs }) =>
      `<svg viewBox="0 0 ${width} 96" width="${width}" height="96" aria-hidden="true">${signs}</svg>`,
  );
  return `<div class="notation" role="img" aria-label="${spoken(shown)}">${pictures.join('')}</div>${more}`;
}

/** The drawn beats of a line, each as the inside of an SVG picture 96 units high. */
export function beatPictures(result: DrawnSlots, lineIndex: number): BeatPicture[] {
  const beats = beatsOf(result, lineIndex).slice(0, beatsShown);
  return beats.map((beat, i) => beatPicture(beat, i > 0 && beat.bar !== beats[i - 1]!.bar));
}

interface BeatPicture {
  readonly width: number;
  readonly signs: string;
}

function beatPicture({ divisions, notes }: Beat, barBefore: boolean): BeatPicture {
  const width = 2 * edge + (divisions - 1) * step;
  const x = (partial: number) => edge + (partial - 1) * step;
  const parts = [`<path d="M0 ${line}H${width}" class="staff"/>`];
  if (barBefore) parts.push(`<path d="M1 ${line - 14}V${line + 14}" class="bar"/>`);
  for (let partial = 1; partial <= divisions; partial++) {
    const note = notes.find((n) => n.partial === partial);
    parts.push(note === undefined ? rest(x(partial)) : noteSigns(note, x(partial)));
  }
  const first = notes[0];
  const last = notes.at(-1);
  if (first !== undefined && last !== undefined && beamCount(divisions) > 0) {
    const [from, to] = [x(first.partial) + 5, x(last.partial) + 5];
    for (let i = 0; i < beamCount(divisions); i++) {
      parts.push(`<path d="M${from} ${beam + i * 6}H${Math.max(to, from + 8)}" class="beam"/>`);
    }
  }
  if ([3, 5, 6, 7].includes(divisions)) {
    parts.push(`<text x="${width / 2 + 4}" y="9" class="count">${divisions}</text>`);
  }
  return { width, signs: parts.join('') };
}

function noteSigns({ hand, accent, buzz, grace }: Note, x: number): string {
  const accentSign = accent ? `<path d="M${x} 14L${x + 10} 18L${x} 22" class="accent"/>` : '';
  const buzzSign = buzz ? `<text x="${x + 5}" y="${beam + 20}" class="buzz">z</text>` : '';
  const graceSigns = grace.map((graceHand, i) => {
    const at = x - 6 - 7 * (grace.length - 1 - i);
    return (
      `<circle cx="${at}" cy="${line}" r="2.4" class="head"/><path d="M${at + 2} ${line}V${line - 14}" class="stem"/>` +
      `<text x="${at}" y="${line + 24}" class="grace">${graceHand.toLowerCase()}</text>`
    );
  });
  return (
    `<ellipse cx="${x}" cy="${line}" rx="5.4" ry="4" transform="rotate(-18 ${x} ${line})" class="head"/>` +
    `<path d="M${x + 5} ${line - 1}V${beam}" class="stem"/>${accentSign}${buzzSign}${graceSigns.join('')}` +
    `<text x="${x}" y="${line + 26}" class="hand${accent ? ' strong' : ''}">${hand}</text>`
  );
}

function rest(x: number): string {
  return `<path d="M${x - 4} ${line - 12}q4 5 8 0L${x} ${line + 8}" class="rest"/>`;
}

function spoken(beats: readonly Beat[]): string {
  const words = beats.map(({ divisions, notes }) => {
    const names = Array.from({ length: divisions }, (_, i) => {
      const note = notes.find((n) => n.partial === i + 1);
      if (note === undefined) return 'rest';
      const hand = note.hand === 'R' ? 'right' : 'left';
      return `${note.accent ? 'accented ' : ''}${hand}`;
    });
    return names.join(' ');
  });
  return words.map((beat, i) => `beat ${i + 1}: ${beat}`).join('; ');
}
