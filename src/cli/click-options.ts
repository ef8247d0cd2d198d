import { type ClickOptions, type ClickSound, plainClick } from '../core/click-track/click-plan.ts';
import { longestSilence } from '../core/click-track/next-silence.ts';
import { CommandFault } from './command-fault.ts';
import { numberOption } from './number-option.ts';

/** How the click sounds, as it was typed. */
export interface TypedClick {
  readonly sound?: string;
  readonly divide?: string;
  readonly bell?: true;
  readonly countIn?: string;
  readonly silent?: string;
  readonly heard?: string;
}

export const clickSounds: readonly ClickSound[] = ['wood', 'tick', 'beep'];

/** Halves, triplets, sixteenths, sextuplets. */
const divisions = ['1', '2', '3', '4', '6'];

/** Bars heard before each silence where nothing is said: long enough to settle again. Our judgement. */
const usualHeard = 2;

/** What was typed, as the planning of a click track wants it. Throws a usage fault. */
export function clickOptions({ sound, divide, bell, countIn, silent, heard }: TypedClick): ClickOptions {
  const own = clickSounds.find((name) => name === sound);
  if (sound !== undefined && own === undefined)
    throw new CommandFault('usage', `--sound ${sound} isn't there. Choose from ${clickSounds.join(', ')}.`);
  if (divide !== undefined && !divisions.includes(divide))
    throw new CommandFault('usage', `--divide ${divide} can't be clicked. Choose from 2, 3, 4 and 6.`);
  if (heard !== undefined && silent === undefined)
    throw new CommandFault('usage', '--heard goes with --silent, which says how long the silences are.');
  const bars = { least: 1, most: longestSilence * 4, whole: true } as const;
  const silence =
    silent === undefined
      ? null
      : {
          heard: heard === undefined ? usualHeard : numberOption('--heard', heard, bars),
          lengths: silent.split(',').map((length) => numberOption('--silent', length, bars)),
        };
  return {
    sound: own ?? plainClick.sound,
    subdivisions: Number(divide ?? 1),
    bell: bell ?? false,
    countInBeats:
      countIn === undefined ? null : numberOption('--count-in', countIn, { least: 0, most: 64, whole: true }),
    silence,
  };
}
