import { rounded } from './figures.ts';
import { type Facts, numberOf, type SentenceTable, textOf } from './sentence-table.ts';

const withUnit = (facts: Facts, name: string) => `${rounded(numberOf(facts, name))} ${textOf(facts, 'unit')}`;

/** What was found in one silence or two, without a range. */
function silencesFound(facts: Facts): string {
  const ms = numberOf(facts, 'msPerBeat');
  const way = ms < 0 ? 'sooner' : 'later';
  const silences = numberOf(facts, 'silences') === 1 ? 'the one silence' : 'the two silences';
  return `In ${silences} of this take, ${textOf(facts, 'beats')} beats, each beat came ${rounded(Math.abs(ms))} ms ${way} than the one before.`;
}

/** Why a measure has no figure, and what would give one. `hands-not-told` stands with the open questions. */
export const measureSentences: SentenceTable = {
  'too-few-strokes': (f) =>
    `${textOf(f, 'strokes')} strokes are too few; ${textOf(f, 'needed')} are needed. Record more repeats in one take.`,
  'too-few-accents-or-taps': (f) =>
    `${textOf(f, 'accents')} accents and ${textOf(f, 'taps')} taps are too few; ${textOf(f, 'needed')} of each are needed. Record more repeats in one take.`,
  'too-broken-up': () =>
    'The take is in pieces too short to find a tempo in. Record at least four beats in a row.',
  'found-too-coarsely': (f) =>
    `The strokes could only be found to within ${withUnit(f, 'error')}, too near the figure itself, ${withUnit(f, 'spread')}. Record closer to the pad, in a quieter room.`,
  'one-hand-only': () => 'The exercise is for one hand, so there are no hands to compare.',
  'one-partial-only': () => 'The beat is not divided, so there are no partials to compare.',
  'no-accents': () => 'The exercise has no accents.',
  'no-taps': () => 'Every stroke of the exercise is an accent.',
  'no-such-place': () => 'No stroke of the exercise stands there.',
  'accent-goes-with-partial': () =>
    'The accent always falls on the same partial, so what it does to the rhythm and where the partial lies are one. Add a line whose accent falls elsewhere.',
  'hand-goes-with-partial': () =>
    'Each partial is always played by the same hand, so hands and partials are one. Add a line with another sticking.',
  'needs-a-click': () => 'Only a click in the recording can tell this, and there is none.',
  'too-few-on-the-click': (f) =>
    `${textOf(f, 'strokes')} strokes could be held against the click; ${textOf(f, 'needed')} are needed. Record with the click on from start to end.`,
  'click-never-silent': () =>
    'It shows only where this program played the click and left bars silent, and no bar was.',
  'too-few-silences': (f) =>
    `${silencesFound(f)} It takes ${textOf(f, 'needed')} silences to say how sure that is: play longer, or with more bars left silent.`,
  'no-stroke-in-silence': (f) =>
    `In no silence of the click were there ${textOf(f, 'needed')} strokes to go by. Play on while the click is silent.`,
  'played-to-a-click': () => 'It is a figure of playing without a click, and a click was heard.',
  'several-tempos': () => 'The lines differ in tempo or division, and the figure needs one of each.',
  'too-few-intervals': (f) =>
    `${textOf(f, 'intervals')} intervals in a row are too few; ${textOf(f, 'needed')} are needed. Record a longer take without a click.`,
  'clock-and-motor-do-not-split': () =>
    "Intervals don't make up for each other as they would if inner beat and movement scattered apart from each other: the two can't be parted in this take. A longer take without a click might tell.",
  'no-run-long-enough': (f) =>
    `The longest run without a break has ${textOf(f, 'beats')} beats, and a slow wave shows from ${textOf(f, 'needed')} on. Record one line with more repeats.`,
  'too-short-for-a-trend': (f) =>
    `${textOf(f, 'strokes')} strokes are too few to hold the end against the start; ${textOf(f, 'needed')} are needed. Record more repeats in one take.`,
  'hands-always-change': () =>
    'The hands change at every stroke, so there is no playing on to compare with. A line with doubles would tell.',
  'change-goes-with-partial': () =>
    'The hands always change at the same partials or places by an accent, so the gap and those are one. Add a line with another sticking or no accents.',
  'accent-still-sounding': () =>
    "The accents' echo covers the taps after them, so their loudness can't be told closely enough. Record nearer to the pad, or in a room with less echo.",
  'no-other-taps': () => 'Every tap of the exercise stands there, so there are no others to compare with.',
  'place-goes-with-hand': () =>
    'Taps there are always played by the same hand, so hand and place are one. Add a line with another sticking.',
  'no-accent-pairs': () => 'No beat of the exercise has two accents.',
  'pair-goes-with-hand': () =>
    'The second accent is always played by the other hand, so hand and order are one. Add the same line led by the other hand.',
  'no-rows-on-a-hand': () => 'No hand plays two strokes in a row in this exercise.',
  'no-taps-in-a-row': () => 'Where a hand plays on in this exercise, it plays accents.',
  'row-goes-with-accent': () =>
    'Taps in a row always follow an accent alike, so what the accent does and what the row does are one. Add the same sticking without accents.',
  'one-kind-of-accent': () =>
    'All accents fall on one partial and one hand, so there are no others to compare.',
  'no-grace-notes': () => 'The exercise has no grace notes.',
  'accents-not-told-from-taps': () =>
    'Accents and taps are too near in loudness, or too spread out, to say of a single stroke which it was. A take with softer taps would tell.',
  'accents-all-turned': () => 'The accents lie on other partials all through the take.',
  'no-tempo-asked': () => 'The sheet asks for no tempo, so there is none to compare with.',
};
