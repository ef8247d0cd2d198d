import { createReadStream } from 'node:fs';
import { Command } from 'commander';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
import type { TakeResult } from '../../core/result/take-result.ts';
import { rubrics } from '../../core/scoring/rubrics/index.ts';
import { steady } from '../../core/scoring/rubrics/steady.ts';
import { hashOfFile } from '../../library/backup/store-recording.ts';
import { regradeTake } from '../../library/change-take.ts';
import { audioFile } from '../../library/folder-audio-store.ts';
import { graderVersion } from '../../library/grader-version.ts';
import { LibraryFault } from '../../library/library-fault.ts';
import { libraryFaultSentence } from '../../library/library-fault-sentence.ts';
import type { FolderLibrary } from '../../library/open-folder-library.ts';
import { programVersion } from '../../library/program-version.ts';
import { readKeptTake } from '../../library/read-take.ts';
import { unpackResult } from '../../library/stored-result.ts';
import { CommandFault } from '../command-fault.ts';
import type { CommandOutput } from '../command-output.ts';
import { exitCodes } from '../exit-codes.ts';
import { openPlayed } from '../open-played.ts';
import { findTake } from './find-take.ts';
import { shortId } from './short-id.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly outdated?: true;
}

const help = `
Examples:
  evenhand takes regrade newest
  evenhand takes regrade --outdated

Figures of different versions needn't agree to the last digit. Grading all takes with one version
makes them comparable. A take that can't be read keeps the result it has.
`;

/** Grades kept takes again with this version of the program, from their recordings. */
export function takesRegradeCommand(output: CommandOutput): Command {
  const command = new Command('regrade')
    .description('Grade kept takes again with this version.')
    .argument('[takes...]', 'their names on the list, or newest')
    .option('--outdated', 'all that another version graded, or another build of this one')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string[], { outdated, ...option }: Options) =>
    inLibrary(option, async (library) => {
      if (typed.length > 0 === (outdated === true))
        throw new CommandFault('usage', 'Name the takes, or write --outdated, one of the two.');
      const ids = outdated
        ? (
            await library.db
              .selectFrom('take')
              .select('id')
              .where('gradedWith', '!=', graderVersion)
              .execute()
          ).map(({ id }) => id)
        : await Promise.all(typed.map((name) => findTake(library.db, name)));
      let done = 0;
      for (const id of ids) {
        const told = await regraded(library, id);
        if (told.done) done += 1;
        if (told.sentence !== '')
          output.stderr(
            `${shortId(id)}: ${told.sentence}${told.done ? '' : ' It keeps the result it has.'}\n`,
          );
      }
      if (!outdated && done < ids.length) process.exitCode = exitCodes.fault;
      output.stdout(`${done} of ${ids.length} graded again with version ${programVersion}.\n`);
    }),
  );
}

interface Regraded {
  readonly done: boolean;
  /** Why not, or what is to be known of it; empty where there is nothing to say. */
  readonly sentence: string;
}

const kept = (sentence: string): Regraded => ({ done: false, sentence });

async function regraded(library: FolderLibrary, id: string): Promise<Regraded> {
  const { take, json, sheetText, recordingName, recordingFacts } = await readKeptTake(library.db, id);
  const before = resultBefore(json);
  if (take.audioHash === null) return kept('Its recording was not kept.');
  if (take.partFrom !== null) return kept('It is a part of a longer recording.');
  if (before?.model) return kept('It was held against a model, which was not kept.');
  const parsed = parseSheet(sheetText);
  if (!parsed.ok) return kept('Its sheet can not be read.');
  const marked = before?.scores?.rubric;
  const rubric = marked === undefined ? steady : rubrics.find((one) => one.id === marked);
  if (rubric === undefined)
    return kept(`It was marked by a rubric of your own, "${marked}", which was not kept.`);
  const path = audioFile(library.folder, take.audioHash);
  const hash = await hashOfFile(createReadStream(path));
  if (hash !== take.audioHash)
    return kept(libraryFaultSentence({ code: hash === null ? 'audio-missing' : 'audio-damaged', facts: {} }));
  try {
    const played = await openPlayed(path);
    try {
      const name = before?.recording.name ?? recordingName ?? take.audioHash;
      const anew = played.grade(parsed.sheet, { ...recordingFacts, name, sha256: hash, rubric });
      await regradeTake(library.db, { id, result: anew, gradedWith: graderVersion });
    } finally {
      played.close();
    }
  } catch (error) {
    if (error instanceof CommandFault) return kept(error.message);
    throw error;
  }
  return {
    done: true,
    sentence:
      before === null ? `Its result could not be read, so it was marked by the rubric "${steady.id}".` : '',
  };
}

/** The result so far, or null where it is damaged. */
function resultBefore(json: Uint8Array): TakeResult | null {
  try {
    return unpackResult(json);
  } catch (error) {
    if (error instanceof LibraryFault && error.code === 'result-unreadable') return null;
    throw error;
  }
}
