import { type LineSettings, readSetting, type SettingWord } from '../core/exercise/line-settings.ts';
import { CommandFault } from './command-fault.ts';

/** An option that says how an exercise is played. */
interface LineOption {
  readonly name: string;
  readonly value: string;
  readonly about: string;
  readonly setting: SettingWord;
  /** What to write, as the end of a sentence. */
  readonly way: string;
}

/** Options of `--exercise`; a sheet has the same as settings of its lines. */
export const lineOptions: readonly LineOption[] = [
  {
    name: 'bpm',
    value: 'number',
    about: 'tempo in beats per minute; left out, it is found in the take',
    setting: 'tempo',
    way: 'the beats per minute, such as --bpm 110',
  },
  {
    name: 'times',
    value: 'number',
    about: 'how often the exercise is played in a row (1)',
    setting: 'times',
    way: 'how often the exercise is played, such as --times 4',
  },
  {
    name: 'bar',
    value: 'beats',
    about: 'beats in a bar (4, or as long as the bars written)',
    setting: 'bar',
    way: 'the beats in a bar, such as --bar 4',
  },
  {
    name: 'lead',
    value: 'word',
    about: '"changes" if the hands swap on every second time',
    setting: 'lead',
    way: '--lead changes if the hands swap on every second time, otherwise --lead stays',
  },
  {
    name: 'ratio',
    value: 'band',
    about: 'decibels that accents should stand above taps, such as 8..16',
    setting: 'ratio',
    way: 'the band in decibels, such as --ratio 8..16',
  },
];

/** Settings of a line from options as they were typed. Throws a usage fault that names the option and its value. */
export function settingsFromOptions(typed: Readonly<Record<string, unknown>>): Partial<LineSettings> {
  let settings: Partial<LineSettings> = {};
  for (const { name, setting, way } of lineOptions) {
    const value = typed[name];
    if (typeof value !== 'string') continue;
    const read = readSetting(setting, value);
    if (!read.ok) throw new CommandFault('usage', faultSentence(`--${name} ${value}`, way, read));
    settings = { ...settings, ...read.settings };
  }
  return settings;
}

type Fault = Extract<ReturnType<typeof readSetting>, { ok: false }>;

function faultSentence(typed: string, way: string, { code, facts }: Fault): string {
  switch (code) {
    case 'setting-out-of-range':
      return `${typed} is out of range. Choose from ${facts.least} to ${facts.most}.`;
    case 'setting-not-whole':
      return `${typed} must be a whole number. Leave the fraction out.`;
    case 'ratio-upside-down':
      return `${typed} doesn't rise. Write the smaller number of decibels first.`;
    default:
      return `${typed.trim()} can't be understood. Write ${way}.`;
  }
}
