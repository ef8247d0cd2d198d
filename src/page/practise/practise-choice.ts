import { findExercise } from '../../core/exercise/catalogue.ts';
import { faultText } from '../../core/exercise/fault-text.ts';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import { risingSheet, risingTempos } from '../../core/exercise/rising-sheet.ts';
import type { Sheet, SheetLine } from '../../core/exercise/sheet.ts';
import { fewestTempos } from '../../core/scoring/breaking/tempo-of-break.ts';

export type Way = 'exercise' | 'own' | 'sheet';

/** What is to be played, as the player chose it. */
export interface PractiseChoice {
  readonly way: Way;
  /** Id in the catalogue. */
  readonly exercise: string;
  /** Lines in the player's own notation. */
  readonly own: string;
  /** A teacher's sheet: name of the file and its text; null until one was opened. */
  readonly sheet: { readonly name: string; readonly text: string } | null;
  readonly bpm: number;
  readonly repeats: number;
  /** One exercise faster and faster, from `bpm` to `riseTo`, so many times at each tempo. */
  readonly rising: boolean;
  readonly riseTo: number;
  readonly riseStep: number;
  readonly riseTimes: number;
  /** A sheet's own tempos, where it has any, rather than `bpm`. */
  readonly tempoAsWritten: boolean;
  /** Hands change over on every second repeat. */
  readonly leadChange: boolean;
  /** Ask what the player thinks of a take before its figures are shown. */
  readonly guessFirst: boolean;
}

/** Gentle to begin with. Our judgement. */
export const firstChoice: PractiseChoice = {
  way: 'exercise',
  exercise: 'triplet-1-hand-to-hand',
  own: '>RLR >LRL',
  sheet: null,
  bpm: 90,
  repeats: 8,
  rising: false,
  riseTo: 150,
  riseStep: 10,
  riseTimes: 4,
  tempoAsWritten: true,
  leadChange: false,
  guessFirst: false,
};

/** Beats per minute from one tempo to the next. */
export const riseSteps = { least: 1, most: 50 } as const;

export type ChosenSheet =
  | {
      readonly ok: true;
      readonly sheet: Sheet;
      /** The text sets tempos or repeats itself. */
      readonly settings: boolean;
      /** It is one exercise whose tempo rises. */
      readonly rising: boolean;
    }
  | {
      readonly ok: false;
      readonly sentence: string;
      /** Too few tempos, and nothing wrong with the notes. */
      readonly rising?: boolean;
    };

/**
 * The sheet that a choice makes: every line has a tempo, as there is to be a click. Tempo and repeats chosen beside a
 * text hold where the text says nothing of them.
 *
 * @example chosenSheet(firstChoice) // one line, 8 times at 90
 */
export function chosenSheet(choice: PractiseChoice): ChosenSheet {
  const { way, exercise, sheet, own } = choice;
  if (way === 'exercise') {
    if (findExercise(exercise) === null) return { ok: false, sentence: 'Choose an exercise from the list.' };
    return readText(exercise, choice, '');
  }
  if (way === 'sheet') {
    if (sheet === null) return { ok: false, sentence: 'Open the sheet that your teacher gave you.' };
    return readText(sheet.text, choice, sheet.name);
  }
  return readText(own, choice, '');
}

function readText(text: string, choice: PractiseChoice, title: string): ChosenSheet {
  const parsed = parseSheet(text);
  if (!parsed.ok) return { ok: false, sentence: faultText(text, parsed.faults[0]!) };
  // A colon only stands behind the word of a setting; x2 is one without.
  const settings = /[:;]/.test(text.replace(/#.*$/gm, ''));
  const asWritten = settings && choice.tempoAsWritten;
  const lines = parsed.sheet.lines.map(
    (line): SheetLine => ({
      ...line,
      bpm: asWritten ? (line.bpm ?? choice.bpm) : choice.bpm,
      repeats: settings ? line.repeats : choice.repeats,
      leadChange: line.leadChange || (!settings && choice.leadChange),
    }),
  );
  const name = parsed.sheet.title || (lines.length === 1 ? lines[0]!.label : title);
  const [line] = lines;
  if (choice.rising && line !== undefined && lines.length === 1) return rise(line, choice, settings);
  return { ok: true, sheet: { title: name, lines }, settings, rising: false };
}

function rise(line: SheetLine, choice: PractiseChoice, settings: boolean): ChosenSheet {
  const { bpm, riseTo, riseStep, riseTimes, leadChange } = choice;
  const tempos = { from: bpm, to: riseTo, step: riseStep };
  const count = risingTempos(tempos).length;
  if (count < fewestTempos)
    return {
      ok: false,
      rising: true,
      sentence: `From ${bpm} to ${riseTo} by ${riseStep} makes ${count === 1 ? 'one tempo' : `${count} tempos`}; it takes ${fewestTempos} to tell where it breaks. Let it go further, or in smaller steps.`,
    };
  const each = { ...line, repeats: riseTimes, leadChange: line.leadChange || leadChange };
  return { ok: true, sheet: risingSheet(each, tempos), settings, rising: true };
}

/** Seconds that a sheet takes from its first beat to the end of its last, rests of the last line left out. */
export function secondsOf({ lines }: Sheet): number {
  return lines.reduce((sum, line, i) => {
    const rest = i === lines.length - 1 ? 0 : line.restBeats;
    return sum + ((line.repeats * line.beats.length + rest) * 60) / (line.bpm ?? firstChoice.bpm);
  }, 0);
}
