import { Command } from 'commander';
import { takeTime } from '../../core/result/figures.ts';
import { audioFile } from '../../library/folder-audio-store.ts';
import { readTake } from '../../library/read-take.ts';
import type { CommandOutput } from '../command-output.ts';
import { openTake } from '../open-take.ts';
import { checkOutputPaths, type FileOutputs } from '../output-paths.ts';
import { printable } from '../text-layout.ts';
import { textSummary } from '../text-summary.ts';
import { writeOutputs } from '../write-outputs.ts';
import { findTake } from './find-take.ts';
import { localTime } from './local-day.ts';
import { shortId } from './short-id.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly json?: string | true;
  readonly csv?: string;
  readonly report?: string;
  readonly sound: boolean;
}

const help = `
Examples:
  evenhand takes show newest
  evenhand takes show newest --report monday.html
`;

/** Shows a kept take again as it was graded; nothing is analysed anew. */
export function takesShowCommand(output: CommandOutput): Command {
  const command = new Command('show')
    .description('Show a kept take again, as it was graded.')
    .argument('<take>', 'its name on the list, or newest')
    .option('--json [file]', 'write the whole result as JSON, on the screen without a file')
    .option('--csv <file>', 'write the strokes as a table for a spreadsheet')
    .option('--report <file>', 'write a report with pictures to open in a browser')
    .option('--no-sound', 'leave the sound of the take out of the report')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string, options: Options) =>
    inLibrary(options, async (library) => {
      const { json, csv, report } = options;
      const files: FileOutputs = {
        ...(json === undefined ? {} : { json: json === true ? '-' : json }),
        ...(csv === undefined ? {} : { csv }),
        ...(report === undefined ? {} : { report }),
      };
      checkOutputPaths(files, undefined, []);
      const id = await findTake(library.db, typed);
      const { take, result, remarks } = await readTake(library.db, id);
      if (!Object.values(files).includes('-')) {
        const of = [take.technique, take.pad, take.sticks, take.device].map(printable).filter(Boolean);
        const head = [
          shortId(id),
          localTime(take.recordedAt),
          printable(take.personName ?? 'no player'),
          ...of,
        ];
        output.stdout(`${head.join(', ')}\n${textSummary(result, { color: false, width: 80 })}`);
        for (const { moment, text, author } of remarks)
          output.stdout(
            `Remark${moment === null ? '' : ` at ${takeTime(moment)}`}${author === '' ? '' : ` by ${printable(author)}`}: ${printable(text)}\n`,
          );
      }
      const hash = report !== undefined && options.sound ? take.audioHash : null;
      const recording = hash === null ? null : await openTake(audioFile(library.folder, hash));
      try {
        const sound = recording === null ? null : recording.source;
        await writeOutputs(result, { files, pictures: undefined, sound }, output);
      } finally {
        recording?.close();
      }
    }),
  );
}
