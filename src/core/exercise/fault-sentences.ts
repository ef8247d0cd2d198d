import type { TextFault } from './fault.ts';
import type { SheetFaultCode } from './parse-sheet.ts';

type Facts = TextFault['facts'];

/** What to write for each setting, as the end of a sentence. */
const ways: Readonly<Record<string, string>> = {
  tempo: 'the beats per minute, such as tempo: 110, or tempo: open',
  times: 'how often the line is played, such as times: 2',
  bar: 'the beats in a bar, such as bar: 4',
  rest: 'the beats of rest after the line, such as rest: 4',
  lead: 'lead: changes if the hands swap on every second time, otherwise lead: stays',
  ratio: 'the band in decibels, such as ratio: 8 to 16 dB, or ratio: any',
  name: 'any words, such as name: Accent on two',
  title: 'any words, such as title: Off the beat',
  for: 'whose it is, such as for: Mirelle',
  due: 'the day by year, month and day, such as due: 2026-03-16',
  note: 'any words, such as note: Keep the taps low',
};

const meant = (facts: Facts) => (facts.nearest ? ` Did you mean "${facts.nearest}"?` : '');
const way = (facts: Facts) => `Write ${ways[facts.setting ?? ''] ?? 'a value'}.`;

/** One sentence or two for each fault: what is wrong, which value, what to do. */
export const faultSentences: Readonly<Record<SheetFaultCode, (facts: Facts) => string>> = {
  'notation-empty': () => 'There is no stroke here. Write R or L for each stroke, such as >RLR >LRL.',
  'notation-too-long': ({ characters, most }) =>
    `The notation has ${characters} characters; ${most} at most can be read. Write a shorter line and repeat it.`,
  'too-many-beats': ({ most }) =>
    `The notation goes past ${most} beats. Write a shorter line and repeat it, or split it in two.`,
  'too-many-divisions': ({ most }) =>
    `This beat is divided into more than ${most} parts. Put a space between beats.`,
  'too-many-grace-notes': ({ most }) =>
    `There are more than ${most} grace notes before one stroke. Leave some out, or write strokes in capitals.`,
  'unknown-sign': ({ sign }) =>
    /^[‐-―−]$/u.test(String(sign))
      ? `"${sign}" isn't the sign for a rest. Write a plain hyphen: -`
      : `"${sign}" means nothing here. Write R or L for a stroke, - for a rest, > before an accent, | between bars.`,
  'grace-without-stroke': ({ sign }) =>
    `The small "${sign}" is a grace note and no stroke follows it. Write strokes in capitals, R and L.`,
  'accent-without-stroke': () => 'This > has no stroke after it. Write R or L behind it, or take it out.',
  'accent-twice': () => 'This stroke has two > signs. One is enough.',
  'buzz-without-stroke': () =>
    'This z has no stroke before it. Write it right behind R or L, or take it out.',
  'buzz-twice': () => 'This stroke has two z. One is enough.',
  'empty-bar': () =>
    'There is no beat between these two bar lines. Take one of them out, or write - for a rest.',
  'unknown-exercise': (facts) =>
    `No exercise is called "${facts.value}".${meant(facts)} Write the name of a listed one, or strokes in capitals.`,
  'bar-too-long': ({ beats, value }) =>
    `A bar has ${beats} beats between its bar lines, but the line says bar: ${value}. Change one of the two.`,
  'setting-empty': (facts) => `"${facts.setting}" has nothing behind it. ${way(facts)}`,
  'setting-unreadable': (facts) => `"${facts.value}" can't be read as ${facts.setting}. ${way(facts)}`,
  'setting-out-of-range': ({ setting, value, least, most }) =>
    `"${value}" is out of range for ${setting}. Choose from ${least} to ${most}.`,
  'setting-not-whole': ({ setting, value }) =>
    `"${value}" must be a whole number for ${setting}. Leave the fraction out.`,
  'ratio-upside-down': ({ value }) => `"${value}" doesn't rise. Write the smaller number of decibels first.`,
  'name-too-long': ({ setting, characters, most }) =>
    `The ${setting} has ${characters} characters; ${most} at most can be kept. Shorten it.`,
  'sheet-empty': () =>
    'The sheet has no exercise in it. Write one a line, such as >RLR >LRL ; times: 8 ; tempo: 110',
  'sheet-too-long': ({ characters, most }) =>
    `The sheet has ${characters} characters; ${most} at most can be read. Split it into several sheets.`,
  'too-many-lines': ({ most }) => `The sheet goes past ${most} exercises. Split it into several sheets.`,
  'too-many-strokes': ({ most }) =>
    `With this line the sheet goes past ${most} strokes. Lower "times", or split it into several sheets.`,
  'exercise-missing': () =>
    'There is no exercise before this semicolon. Write one, or take the semicolon out.',
  'not-a-setting': ({ value }) =>
    `"${value}" is no setting. Behind a semicolon write a word and its value, such as tempo: 110`,
  'unknown-setting': (facts) =>
    `"${facts.value}" is no setting.${meant(facts)} There are title, for, due, note, tempo, times, bar, rest, lead, ratio and name.`,
  'setting-twice': ({ setting }) => `"${setting}" stands twice in this line. Take one of them out.`,
  'heading-twice': ({ setting }) => `The sheet has "${setting}" twice. Take one of them out.`,
  'heading-on-line': ({ setting }) =>
    `"${setting}" belongs to the whole sheet. Put it on a line of its own${setting === 'title' ? ', or write name: instead' : ''}.`,
  'name-without-line': () =>
    'A name belongs to one exercise. Put it in the line of that exercise, behind a semicolon.',
  'quote-open': () => 'This quotation mark is never closed. Put another " at the end of the text.',
  'text-after-quote': () =>
    'There is text behind the closing quotation mark. Put a semicolon between, or take it out.',
};
