import { Command } from 'commander';
import { settingRanges } from '../../core/exercise/line-settings.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import { assignmentWords } from '../../core/progress/assignment-words.ts';
import { atTempo } from '../../library/assignment-sheet.ts';
import { setAssignment } from '../../library/assignments.ts';
import type { LibraryDb } from '../../library/library.ts';
import { addPerson } from '../../library/people.ts';
import { askedSheet } from '../asked-sheet.ts';
import type { CommandOutput } from '../command-output.ts';
import { numberOption } from '../number-option.ts';
import { printable } from '../text-layout.ts';
import { playerNamed } from './find-player.ts';
import { checkDayOption } from './keep-options.ts';
import { localDay } from './local-day.ts';
import { shortId } from './short-id.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './with-library.ts';

interface Options extends LibraryOption {
  readonly player?: string;
  readonly due?: string;
  readonly note?: string;
  readonly bpm?: string;
}

const help = `
Examples:
  evenhand assignments set week-7.sheet --player Mirelle --due 2026-12-01 --bpm 96
  evenhand assignments set monday.sheet --note "Left hand first, softly"

The sheet's own headings say the same: for: Mirelle, due: 2026-12-01, note: Left hand first.
`;

/** Hands out a sheet to a player, or to anybody, until a day. */
export function assignmentsSetCommand(output: CommandOutput): Command {
  const command = new Command('set')
    .description('Hand out a sheet: what to practise, for whom and until when.')
    .argument('<sheet>', 'the file of the sheet')
    .option('--player <name>', "for whom; a new player is added (the sheet's own)")
    .option('--due <day>', "until which day, such as 2026-12-01 (the sheet's own)")
    .option('--bpm <tempo>', "beats per minute of every line, written into the sheet (the sheet's own)")
    .option('--note <words>', "a word to the player (the sheet's own)")
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((path: string, { player, due, note, bpm, ...option }: Options) => {
    const { assigned, ...sheet } = askedSheet({ sheet: path });
    const tempo = bpm === undefined ? null : numberOption('--bpm', bpm, settingRanges.tempo);
    const name = player ?? assigned?.player ?? '';
    const dueDay = due ?? assigned?.due ?? null;
    if (dueDay !== null) checkDayOption('due', dueDay);
    return inLibrary(
      option,
      async ({ db }) => {
        const personId = name.trim() === '' ? null : await playerOf(db, name);
        const setAt = Date.now();
        const id = crypto.randomUUID();
        // Headings belong to the assignment; the sheet without them is the same sheet for everybody. The tempo stays in
        // the
        // sheet: it is what travels.
        const row = {
          id,
          personId,
          bpm: null,
          dueDay,
          note: note ?? assigned?.note ?? '',
          setAt,
          doneAt: null,
        };
        await setAssignment(db, {
          ...row,
          sheetText: writeSheet({ ...sheet, lines: atTempo(sheet.lines, tempo) }),
        });
        const whom = personId === null ? 'anybody' : printable(name);
        const until = assignmentWords(row, localDay(new Date(setAt)));
        output.stdout(`${shortId(id)}  ${printable(sheet.title) || 'The sheet'} for ${whom}: ${until}.\n`);
      },
      { make: true },
    );
  });
}

async function playerOf(db: LibraryDb, name: string): Promise<string> {
  const known = await playerNamed(db, name);
  if (known !== undefined) return known.id;
  const id = crypto.randomUUID();
  await addPerson(db, { id, name, role: 'student', note: '', createdAt: Date.now() });
  return id;
}
