import type { TextFault } from './fault.ts';
import { limits } from './limits.ts';
import type { RatioBand } from './sheet.ts';

/** What can be said about a line besides its notes. */
export interface LineSettings {
  readonly bpm: number | null;
  readonly repeats: number;
  readonly beatsInBar: number;
  readonly restBeats: number;
  readonly leadChange: boolean;
  readonly ratioBand: RatioBand | null;
  readonly label: string;
}

/** Word that a sheet uses for each setting. */
export const settingWords = {
  tempo: 'bpm',
  times: 'repeats',
  bar: 'beatsInBar',
  rest: 'restBeats',
  lead: 'leadChange',
  ratio: 'ratioBand',
  name: 'label',
} as const satisfies Record<string, keyof LineSettings>;

export type SettingWord = keyof typeof settingWords;

/** What holds where neither the line nor the sheet says anything; a line's name comes from its notes. */
export const plainSettings: Omit<LineSettings, 'label'> = {
  bpm: null,
  repeats: 1,
  beatsInBar: 4,
  restBeats: 0,
  leadChange: false,
  ratioBand: null,
};

/** Least and most of each number, our judgement: wider than anything practised to a metronome. */
export const settingRanges = {
  tempo: { least: 10, most: 500 },
  times: { least: 1, most: 999 },
  bar: { least: 1, most: 32 },
  rest: { least: 0, most: 256 },
  ratio: { least: 0, most: 60 },
} as const;

export type SettingFaultCode =
  | 'setting-empty'
  | 'setting-unreadable'
  | 'setting-out-of-range'
  | 'setting-not-whole'
  | 'ratio-upside-down'
  | 'name-too-long';

type ReadSetting =
  | { readonly ok: true; readonly settings: Partial<LineSettings> }
  | { readonly ok: false; readonly code: SettingFaultCode; readonly facts: TextFault['facts'] };

const number = String.raw`(\d{1,6}(?:[.,]\d{1,6})?)`;
const forms = {
  tempo: new RegExp(`^${number}(?:\\s*bpm)?$`, 'i'),
  times: new RegExp(`^(?:[x×]\\s*)?${number}(?:\\s*(?:[x×]|times?))?$`, 'i'),
  bar: new RegExp(`^${number}(?:\\s*beats?)?$`, 'i'),
  rest: new RegExp(`^${number}(?:\\s*beats?)?$`, 'i'),
  ratio: new RegExp(`^${number}(?:\\s*dB)?\\s*(?:to|\\.\\.|-|–)\\s*${number}(?:\\s*dB)?$`, 'i'),
};

/**
 * Reads the value of one setting as a person writes it: `tempo` 110 or `open`, `times` 2 (also `x2`), `bar` and
 * `rest` in beats, `lead` `changes` or `stays`, `ratio` `8 to 16 dB` or `any`, `name` any text. A decimal comma
 * counts as a point.
 *
 * @example readSetting('ratio', '8 to 16 dB') // { ok: true, settings: { ratioBand: { minDb: 8, maxDb: 16 } } }
 */
export function readSetting(setting: SettingWord, text: string): ReadSetting {
  const value = text.trim();
  const fail = (code: SettingFaultCode, facts: TextFault['facts'] = {}): ReadSetting => ({
    ok: false,
    code,
    facts: { setting, value: value.slice(0, 60), ...facts },
  });
  if (value === '') return fail('setting-empty');

  if (setting === 'name') {
    const characters = [...value].length;
    if (characters > limits.nameCharacters) {
      return fail('name-too-long', { characters, most: limits.nameCharacters });
    }
    return { ok: true, settings: { label: value } };
  }
  const word = value.toLowerCase();
  if (setting === 'lead') {
    if (word !== 'changes' && word !== 'stays') return fail('setting-unreadable');
    return { ok: true, settings: { leadChange: word === 'changes' } };
  }
  if (setting === 'tempo' && word === 'open') return { ok: true, settings: { bpm: null } };
  if (setting === 'ratio' && word === 'any') return { ok: true, settings: { ratioBand: null } };

  const found = forms[setting].exec(value);
  if (found === null) return fail('setting-unreadable');
  const [first = 0, second = 0] = found.slice(1).map((digits) => Number(digits.replace(',', '.')));
  const { least, most } = settingRanges[setting];
  if (Math.min(first, setting === 'ratio' ? second : first) < least || Math.max(first, second) > most) {
    return fail('setting-out-of-range', { least, most });
  }
  if (setting === 'ratio') {
    if (first >= second) return fail('ratio-upside-down');
    return { ok: true, settings: { ratioBand: { minDb: first, maxDb: second } } };
  }
  if (setting !== 'tempo' && !Number.isInteger(first)) return fail('setting-not-whole');
  return { ok: true, settings: { [settingWords[setting]]: first } };
}
