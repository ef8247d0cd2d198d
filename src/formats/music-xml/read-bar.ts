import type { XmlElement } from '@rgrove/parse-xml';
import type { Hand } from '../../core/exercise/sheet.ts';
import type { ScoreBar, ScoreEvent } from './score.ts';
import { childrenOf, elementAt, numberAt, textAt } from './xml-tree.ts';

/** What carries over from bar to bar. */
export interface Metre {
  readonly divisions: number;
  readonly beats: number;
  readonly beatType: number;
}

export const usualMetre: Metre = { divisions: 1, beats: 4, beatType: 4 };

interface ReadBar {
  readonly bar: ScoreBar;
  readonly metre: Metre;
  /** Notes at the same time as another, which one pad can't play. */
  readonly chords: number;
  readonly hasEnding: boolean;
}

/** Eighths, sixteenths and the like in threes are felt in dotted beats. */
function beatOf({ beats, beatType }: Metre): number {
  const compound = beatType >= 8 && beats > 3 && beats % 3 === 0;
  return (4 / beatType) * (compound ? 3 : 1);
}

/** Reads one measure of a part; only `voice` is kept. */
export function readBar(measure: XmlElement, before: Metre, voice: string): ReadBar {
  let metre = before;
  let at = 0;
  let furthest = 0;
  let chords = 0;
  let tempo: number | null = null;
  let begins = false;
  let times: number | null = null;
  let ends = false;
  let hasEnding = false;
  let grace: (Hand | null)[] = [];
  const words: string[] = [];
  const events: ScoreEvent[] = [];

  for (const element of childrenOf(measure)) {
    const quarters = (numberAt(element, 'duration') ?? 0) / metre.divisions;
    if (element.name === 'attributes') metre = metreOf(element, metre);
    else if (element.name === 'backup') at = Math.max(0, at - quarters);
    else if (element.name === 'forward') at += quarters;
    else if (element.name === 'barline') {
      const repeat = elementAt(element, 'repeat');
      const style = textAt(element, 'bar-style');
      if (repeat?.attributes.direction === 'forward') begins = true;
      if (repeat?.attributes.direction === 'backward') times = Number(repeat.attributes.times ?? 2) || 2;
      if (element.attributes.location !== 'left' && ['light-light', 'light-heavy'].includes(style))
        ends = true;
      hasEnding ||= elementAt(element, 'ending') !== undefined;
    } else if (element.name === 'direction' || element.name === 'sound') {
      tempo = tempoOf(element) ?? tempo;
      for (const type of childrenOf(element, 'direction-type')) {
        begins ||= elementAt(type, 'rehearsal') !== undefined;
        for (const one of childrenOf(type, 'words')) words.push(one.text.trim());
      }
    } else if (element.name === 'note') {
      const own = (textAt(element, 'voice') || '1') === voice;
      const chord = elementAt(element, 'chord') !== undefined;
      if (elementAt(element, 'grace') !== undefined) {
        if (own && !chord) grace.push(handOf(element));
        continue;
      }
      if (chord) {
        if (own) chords += 1;
        continue;
      }
      if (own) {
        events.push({ at, stroke: strokeOf(element, grace) });
        grace = [];
      }
      at += quarters;
    }
    furthest = Math.max(furthest, at);
  }
  const full = (metre.beats * 4) / metre.beatType;
  const quarters = furthest > 0 ? furthest : full;
  const bar = { events, quarters, beatQuarters: beatOf(metre), tempo, begins, words, times, ends };
  return { bar, metre, chords, hasEnding };
}

function metreOf(attributes: XmlElement, before: Metre): Metre {
  const divisions = numberAt(attributes, 'divisions');
  const time = elementAt(attributes, 'time');
  const beats = time && numberAt(time, 'beats');
  const beatType = time && numberAt(time, 'beat-type');
  return {
    divisions: divisions !== null && divisions > 0 ? divisions : before.divisions,
    beats: beats != null && beats > 0 ? beats : before.beats,
    beatType: beatType != null && beatType > 0 ? beatType : before.beatType,
  };
}

const unitQuarters: Readonly<Record<string, number>> = {
  whole: 4,
  half: 2,
  quarter: 1,
  eighth: 0.5,
  '16th': 0.25,
};

/** Quarters a minute: by the metronome mark, which is what people read, else by how the score is to sound. */
function tempoOf(element: XmlElement): number | null {
  const mark = childrenOf(element, 'direction-type').flatMap((type) => childrenOf(type, 'metronome'))[0];
  const perMinute = mark && numberAt(mark, 'per-minute');
  const unit = mark && unitQuarters[textAt(mark, 'beat-unit')];
  if (mark !== undefined && perMinute != null && unit !== undefined)
    return perMinute * unit * (elementAt(mark, 'beat-unit-dot') === undefined ? 1 : 1.5);
  const sound = element.name === 'sound' ? element : elementAt(element, 'sound');
  const tempo = Number(sound?.attributes.tempo);
  return tempo > 0 && Number.isFinite(tempo) ? tempo : null;
}

/** The stroke of a note; null for a rest and for a note tied to the one before it. */
function strokeOf(note: XmlElement, grace: readonly (Hand | null)[]): ScoreEvent['stroke'] {
  const tied = childrenOf(note, 'tie').some(({ attributes }) => attributes.type === 'stop');
  if (tied || elementAt(note, 'rest') !== undefined) return null;
  const marks = childrenOf(note, 'notations');
  const articulations = marks.flatMap((one) => childrenOf(one, 'articulations'));
  const tremolo = marks
    .flatMap((one) => childrenOf(one, 'ornaments'))
    .flatMap((one) => childrenOf(one, 'tremolo'));
  return {
    hand: handOf(note),
    accent: articulations.some((one) => elementAt(one, 'accent') ?? elementAt(one, 'strong-accent')),
    buzz: tremolo.some(({ attributes }) => attributes.type === 'unmeasured'),
    grace,
  };
}

/** The hand that fingering, another technical mark or a syllable under the note names. */
function handOf(note: XmlElement): Hand | null {
  const technical = childrenOf(note, 'notations').flatMap((one) => childrenOf(one, 'technical'));
  const texts = [
    ...technical.flatMap((one) => childrenOf(one)).map((one) => one.text),
    ...childrenOf(note, 'lyric').map((one) => textAt(one, 'text')),
  ];
  const found = texts.map((text) => text.trim().toUpperCase()).find((text) => text === 'R' || text === 'L');
  return found === undefined ? null : (found as Hand);
}
