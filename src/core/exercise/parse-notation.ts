import type { TextFault } from './fault.ts';
import { limits } from './limits.ts';
import type { Beat, Hand, Note } from './sheet.ts';

export type NotationFaultCode =
  | 'notation-empty'
  | 'notation-too-long'
  | 'too-many-beats'
  | 'too-many-divisions'
  | 'too-many-grace-notes'
  | 'unknown-sign'
  | 'grace-without-stroke'
  | 'accent-without-stroke'
  | 'accent-twice'
  | 'buzz-without-stroke'
  | 'buzz-twice'
  | 'empty-bar';

type NotationFault = TextFault<NotationFaultCode>;

type ParsedNotation =
  | { readonly ok: true; readonly beats: readonly Beat[] }
  | { readonly ok: false; readonly fault: NotationFault };

interface Place {
  readonly line: number;
  readonly column: number;
}

interface Opened extends Place {
  readonly sign: string;
}

/**
 * Reads the text notation of an exercise: a group of signs per beat, the beat divided equally among them. `R` and
 * `L` are strokes, `-` a rest, `>` before a stroke its accent, `z` after a stroke a buzz, small `r` and `l` before
 * a stroke its grace notes; `|` stands between bars. Any text is safe to hand in: the answer is the beats, or
 * the first fault with its place.
 *
 * @example parseNotation('>RLR >LRL') // two beats of triplets, accents on the first partial
 */
export function parseNotation(text: string): ParsedNotation {
  const beats: Beat[] = [];
  let partials: (Note | null)[] = [];
  let grace: Hand[] = [];
  let accent = false;
  let opened: Opened | null = null;
  let barBefore = false;
  let strokes = 0;
  let line = 1;
  let column = 0;

  const fail = (
    code: NotationFaultCode,
    facts: NotationFault['facts'] = {},
    place: Place = { line, column },
  ): ParsedNotation => ({ ok: false, fault: { code, line: place.line, column: place.column, facts } });

  if (text.length > limits.notationCharacters) {
    return fail(
      'notation-too-long',
      { characters: text.length, most: limits.notationCharacters },
      { line: 1, column: 1 },
    );
  }

  /** What was begun for a stroke that didn't come. */
  const leftOpen = (): ParsedNotation | null =>
    opened === null
      ? null
      : fail(
          opened.sign === '>' ? 'accent-without-stroke' : 'grace-without-stroke',
          { sign: opened.sign },
          opened,
        );

  const closeBeat = (): ParsedNotation | null => {
    const fault = leftOpen();
    if (fault !== null || partials.length === 0) return fault;
    if (beats.length === limits.beatsInNotation)
      return fail('too-many-beats', { most: limits.beatsInNotation });
    beats.push({ partials, barBefore });
    partials = [];
    barBefore = false;
    return null;
  };

  for (const sign of text) {
    column += 1;
    let fault: ParsedNotation | null = null;
    if (/\s/u.test(sign)) {
      fault = closeBeat();
      if (sign === '\n') {
        line += 1;
        column = 0;
      }
    } else if (sign === '|') {
      fault = closeBeat();
      if (fault === null && barBefore) fault = fail('empty-bar');
      barBefore = true;
    } else if (sign === '>') {
      if (accent) fault = fail('accent-twice');
      accent = true;
      opened ??= { sign, line, column };
    } else if (sign === 'r' || sign === 'l') {
      grace.push(sign === 'r' ? 'R' : 'L');
      opened ??= { sign, line, column };
      if (grace.length > limits.graceNotes) fault = fail('too-many-grace-notes', { most: limits.graceNotes });
    } else if (sign === 'z') {
      const last = partials.at(-1);
      if (opened !== null || last === undefined || last === null) fault = fail('buzz-without-stroke');
      else if (last.buzz) fault = fail('buzz-twice');
      else partials[partials.length - 1] = { ...last, buzz: true };
    } else if (sign === 'R' || sign === 'L' || sign === '-') {
      if (sign === '-') fault = leftOpen();
      if (fault === null && partials.length === limits.divisions) {
        fault = fail('too-many-divisions', { most: limits.divisions });
      }
      if (sign !== '-') strokes += 1;
      partials.push(sign === '-' ? null : { hand: sign, accent, buzz: false, grace });
      accent = false;
      grace = [];
      opened = null;
    } else {
      fault = fail('unknown-sign', { sign });
    }
    if (fault !== null) return fault;
  }
  column += 1;
  const fault = closeBeat();
  if (fault !== null) return fault;
  if (strokes === 0) return fail('notation-empty', {}, { line: 1, column: 1 });
  return { ok: true, beats };
}
