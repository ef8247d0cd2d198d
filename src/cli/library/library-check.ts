import { Command } from 'commander';
import { counted } from '../../core/result/figures.ts';
import { bringBackRecordings } from '../../library/backup/bring-back-recordings.ts';
import { checkLibrary } from '../../library/backup/check-library.ts';
import { libraryFindingSentence } from '../../library/backup/library-finding.ts';
import { backupSource } from '../../library/backup/library-source.ts';
import { clearUnreferencedAudio } from '../../library/delete-audio.ts';
import type { CommandOutput } from '../command-output.ts';
import { exitCodes } from '../exit-codes.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly from?: string;
  readonly clearUnused?: true;
  readonly json?: true;
}

const help = `
Examples:
  evenhand library check
  evenhand library check --from /media/stick/takes

Nothing is changed unless you ask for it with --from or --clear-unused.
`;

/** Checks everything that the library holds; mends only what it is asked to. */
export function libraryCheckCommand(output: CommandOutput): Command {
  const command = new Command('check')
    .description('Check tables, recordings and results, and say what to do about each finding.')
    .option('--from <backup>', 'bring missing and damaged recordings back from a backup first')
    .option('--clear-unused', 'delete recordings that no take uses first')
    .option('--json', 'write findings as JSON')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action(({ from, clearUnused, json, ...option }: Options) =>
    inLibrary(option, async (library) => {
      if (from !== undefined)
        output.stderr(
          `${counted(await bringBackRecordings(library, backupSource(from)), 'recording')} brought back.\n`,
        );
      if (clearUnused)
        output.stderr(`${counted(await clearUnreferencedAudio(library), 'unused recording')} deleted.\n`);
      const findings = [];
      for await (const finding of checkLibrary(library)) {
        findings.push(finding);
        if (!json) output.stdout(`${libraryFindingSentence(finding)}\n`);
      }
      if (json) output.stdout(`${JSON.stringify(findings, null, 2)}\n`);
      else if (findings.length === 0) output.stdout('Everything is as it was kept.\n');
      if (findings.some(({ code }) => code !== 'recordings-unused')) process.exitCode = exitCodes.fault;
    }),
  );
}
