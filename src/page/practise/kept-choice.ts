import { limits } from '../../core/exercise/limits.ts';
import { settingRanges } from '../../core/exercise/line-settings.ts';
import { readKept, writeKept } from '../shell/kept.ts';
import { firstChoice, type PractiseChoice, riseSteps, type Way } from './practise-choice.ts';

const key = 'practise';
const ways: readonly Way[] = ['exercise', 'own', 'sheet'];

/**
 * What was chosen last on this device; what can't be read, or was written by another version, becomes the plain choice.
 */
export const keptChoice = (): PractiseChoice => soundChoice(readKept(key));

export const keepChoice = (choice: PractiseChoice): void => writeKept(key, choice);

/** A choice of whatever was kept: every part that isn't sound is the first choice's. */
export function soundChoice(kept: unknown): PractiseChoice {
  const was = typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  const { way, exercise, own, sheet, bpm, repeats, tempoAsWritten, leadChange, guessFirst } = was;
  const plain = firstChoice;
  return {
    way: ways.find((one) => one === way) ?? plain.way,
    exercise: typeof exercise === 'string' ? exercise : plain.exercise,
    own: typeof own === 'string' && own.length <= limits.sheetCharacters ? own : plain.own,
    sheet: soundSheet(sheet),
    bpm: within(bpm, settingRanges.tempo) ?? plain.bpm,
    repeats: within(repeats, settingRanges.times) ?? plain.repeats,
    rising: was.rising === true,
    riseTo: within(was.riseTo, settingRanges.tempo) ?? plain.riseTo,
    riseStep: within(was.riseStep, riseSteps) ?? plain.riseStep,
    riseTimes: within(was.riseTimes, settingRanges.times) ?? plain.riseTimes,
    tempoAsWritten: typeof tempoAsWritten === 'boolean' ? tempoAsWritten : plain.tempoAsWritten,
    leadChange: typeof leadChange === 'boolean' ? leadChange : plain.leadChange,
    guessFirst: typeof guessFirst === 'boolean' ? guessFirst : plain.guessFirst,
  };
}

function soundSheet(sheet: unknown): PractiseChoice['sheet'] {
  if (typeof sheet !== 'object' || sheet === null) return null;
  const { name, text } = sheet as Record<string, unknown>;
  return typeof name === 'string' && typeof text === 'string' ? { name, text } : null;
}

function within(value: unknown, { least, most }: { readonly least: number; readonly most: number }) {
  return typeof value === 'number' && value >= least && value <= most ? value : null;
}
