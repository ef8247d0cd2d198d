import { Command } from 'commander';
import { hearStrokes } from '../core/onsets/hear-strokes.ts';
import type { Hearing, Stroke } from '../core/onsets/stroke.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { openTake } from './open-take.ts';
import { progressLine, toldOpening } from './progress-line.ts';

interface Options {
  readonly all?: boolean;
  readonly json?: boolean;
}

const help = `
Examples:
  evenhand strokes monday.wav
  evenhand strokes monday.wav --all
  evenhand strokes - --json < monday.wav

Each line holds one stroke on the pad, its columns parted by tabs:
  1  time from the start of the recording, seconds
  2  level, dBFS (a sine at full scale is 0)
With --all, sounds that are no strokes are shown too, and each line goes on with:
  3  standard error of the time, seconds
  4  standard error of the level, dB
  5  what the sound is taken for: pad, click, stick-click, voice or other

--json writes the same as columns: time, levelDb, timeSe, levelSe, sound.
`;

const isPad = ({ sound }: Stroke) => sound === 'pad';

function asLine({ time, levelDb, timeSe, levelSe, sound }: Stroke, all: boolean): string {
  const columns = [time.toFixed(6), levelDb.toFixed(2)];
  if (all) columns.push(timeSe.toFixed(6), levelSe.toFixed(2), sound);
  return `${columns.join('\t')}\n`;
}

function asJson(name: string, { noiseFloorDb, click }: Hearing, sounds: readonly Stroke[]): object {
  const column = <K extends keyof Stroke>(key: K): Stroke[K][] => sounds.map((sound) => sound[key]);
  return {
    recording: name,
    noiseFloorDb,
    clickBpm: click === null ? null : 60 / click.period,
    sounds: {
      time: column('time'),
      levelDb: column('levelDb'),
      timeSe: column('timeSe'),
      levelSe: column('levelSe'),
      sound: column('sound'),
    },
  };
}

/**
 * The command that lists the strokes found in a recording; it needs no exercise. Lines or JSON go to stdout, the rest
 * to stderr. Throws `CommandFault` for a recording that can't be read; a recording without strokes is no fault.
 *
 * @example await strokesCommand(output).parseAsync(['take.wav'], { from: 'user' })
 */
export function strokesCommand(output: CommandOutput = toProcess): Command {
  return new Command('strokes')
    .description('List the strokes found in a recording, with time and level.')
    .argument('<take>', 'the recording (WAV, FLAC, MP3, M4A, Ogg, video, …); - reads it from a pipe')
    .option('--all', 'show other sounds too, with standard errors and what each sound is')
    .option('--json', 'write JSON')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr })
    .action(async (take: string, { all = false, json }: Options) => {
      const progress = progressLine(process.stderr, () => performance.now());
      const recording = await toldOpening(progress, (told) => openTake(take, told));
      try {
        const hearing = hearStrokes(recording.source, progress.tell);
        progress.end();
        const sounds = all ? hearing.sounds : hearing.sounds.filter(isPad);
        if (json) output.stdout(`${JSON.stringify(asJson(recording.name, hearing, sounds))}\n`);
        else output.stdout(sounds.map((sound) => asLine(sound, all)).join(''));
        const strokes = hearing.sounds.filter(isPad).length;
        if (strokes === 0)
          output.stderr('No strokes were found. Check that the microphone was on and near the pad.\n');
      } finally {
        recording.close();
      }
    });
}
