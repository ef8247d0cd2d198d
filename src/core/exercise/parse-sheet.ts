import { longestBar } from './bars.ts';
import type { TextFault } from './fault.ts';
import { limits } from './limits.ts';
import { type LineFault, lineFromText } from './line-from-text.ts';
import {
  type LineSettings,
  plainSettings,
  readSetting,
  type SettingFaultCode,
  type SettingWord,
  settingWords,
} from './line-settings.ts';
import { nearestText } from './nearest-text.ts';
import type { Sheet, SheetLine } from './sheet.ts';
import { assignedOf, type Headings, headingFault, headingWords, isHeading } from './sheet-headings.ts';
import { type SheetPiece, splitSheetLine } from './split-sheet-line.ts';

export type SheetFaultCode =
  | LineFault['code']
  | SettingFaultCode
  | 'sheet-empty'
  | 'sheet-too-long'
  | 'too-many-lines'
  | 'too-many-strokes'
  | 'exercise-missing'
  | 'not-a-setting'
  | 'unknown-setting'
  | 'setting-twice'
  | 'heading-twice'
  | 'heading-on-line'
  | 'name-without-line'
  | 'quote-open'
  | 'text-after-quote';

type SheetFault = TextFault<SheetFaultCode>;

type ParsedSheet =
  | { readonly ok: true; readonly sheet: Sheet }
  | { readonly ok: false; readonly faults: readonly SheetFault[] };

const byPlace = (a: SheetFault, b: SheetFault) => a.line - b.line || a.column - b.column;

type Tell = (code: SheetFaultCode, column: number, facts?: TextFault['facts']) => void;

const isSetting = (word: string): word is SettingWord => Object.hasOwn(settingWords, word);

/** `x2` needs no word. */
const asTimes = (piece: SheetPiece): SheetPiece =>
  piece.word === null && /^[x×]\s*\d+$/i.test(piece.value) ? { ...piece, word: 'times' } : piece;

function readSettings(pieces: readonly SheetPiece[], tell: Tell): Partial<LineSettings> {
  let settings: Partial<LineSettings> = {};
  const seen = new Set<string>();
  for (const { word, column, value, valueColumn } of pieces.map(asTimes)) {
    if (word === null) {
      if (value !== '') tell('not-a-setting', column, { value: value.slice(0, 60) });
    } else if (isHeading(word)) {
      tell('heading-on-line', column, { setting: word });
    } else if (!isSetting(word)) {
      tell('unknown-setting', column, {
        value: word,
        nearest: nearestText(word, [...headingWords, ...Object.keys(settingWords)]),
      });
    } else if (seen.has(word)) {
      tell('setting-twice', column, { setting: word });
    } else {
      seen.add(word);
      const read = readSetting(word, value);
      if (read.ok) settings = { ...settings, ...read.settings };
      else tell(read.code, valueColumn, read.facts);
    }
  }
  return settings;
}

const strokesOf = (line: SheetLine): number =>
  line.repeats *
  line.beats
    .flatMap((beat) => beat.partials)
    .reduce((sum, note) => sum + (note === null ? 0 : 1 + note.grace.length), 0);

/**
 * Reads a sheet that a person wrote. Each line is an exercise, as an id of the catalogue or as notation, and its
 * settings behind semicolons; a setting on a line of its own holds for every line below it; `title:` names the
 * sheet, `for:`, `due:` and `note:` say who is to play it until when; `#` begins a comment. Answers with the sheet or
 * with every fault found, in order, at most 20 of them.
 *
 * @example
 * parseSheet(`
 *   title: Off the beat
 *   tempo: 110
 *   triplet-2-hand-to-hand ; times: 4 ; rest: 8   # two bars of rest
 *   RL>R LR>L ; times: 8 ; lead: changes ; ratio: 8 to 16 dB ; name: Accent on three
 * `)
 */
export function parseSheet(text: string): ParsedSheet {
  const faults: SheetFault[] = [];
  if (text.length > limits.sheetCharacters) {
    const facts = { characters: text.length, most: limits.sheetCharacters };
    return { ok: false, faults: [{ code: 'sheet-too-long', line: 1, column: 1, facts }] };
  }
  let headings: Headings = {};
  let usual: Partial<LineSettings> = {};
  let strokes = 0;
  const lines: SheetLine[] = [];
  let exercises = 0;

  const physicalLines = text.split('\n');
  for (let index = 0; index < physicalLines.length && faults.length < limits.faults; index++) {
    const tell: Tell = (code, column, facts = {}) => {
      if (faults.length < limits.faults) faults.push({ code, line: index + 1, column, facts });
    };
    const { pieces, fault } = splitSheetLine(physicalLines[index]!);
    if (fault !== null) {
      tell(fault.code, fault.column);
      exercises += 1;
      continue;
    }
    const [first, ...rest] = pieces as [SheetPiece, ...SheetPiece[]];
    if (first.word !== null) {
      if (isHeading(first.word)) {
        const fault = headingFault(first.word, first.value);
        if (headings[first.word] !== undefined) tell('heading-twice', first.column, { setting: first.word });
        else if (fault === null) headings = { ...headings, [first.word]: first.value };
        else tell(fault.code, first.valueColumn, fault.facts);
      }
      const { label, ...forAll } = readSettings(isHeading(first.word) ? rest : pieces, tell);
      if (label !== undefined)
        tell('name-without-line', pieces.find((piece) => piece.word === 'name')!.column);
      usual = { ...usual, ...forAll };
      continue;
    }
    if (first.value === '') {
      if (rest.some((piece) => piece.value !== '' || piece.word !== null))
        tell('exercise-missing', first.column);
      continue;
    }

    exercises += 1;
    if (exercises > limits.sheetLines) {
      tell('too-many-lines', first.column, { most: limits.sheetLines });
      break;
    }
    const own = readSettings(rest, tell);
    const { beatsInBar, ...others } = usual;
    const parsed = lineFromText(first.value, { ...others, ...own });
    if (!parsed.ok) {
      tell(parsed.fault.code, first.column - 1 + parsed.fault.column, parsed.fault.facts);
      continue;
    }
    const { line } = parsed;
    const barIsOpen = own.beatsInBar === undefined && longestBar(line.beats) === null;
    lines.push(barIsOpen ? { ...line, beatsInBar: beatsInBar ?? plainSettings.beatsInBar } : line);
    strokes += strokesOf(line);
    if (strokes > limits.sheetStrokes) {
      tell('too-many-strokes', first.column, { most: limits.sheetStrokes });
      break;
    }
  }
  if (exercises === 0 && faults.length === 0) {
    faults.push({ code: 'sheet-empty', line: 1, column: 1, facts: {} });
  }
  if (faults.length > 0) return { ok: false, faults: faults.toSorted(byPlace) };
  const assigned = assignedOf(headings);
  const sheet = { title: headings.title ?? '', lines, ...(assigned === null ? {} : { assigned }) };
  return { ok: true, sheet };
}
