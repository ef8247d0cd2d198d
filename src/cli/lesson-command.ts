import { Command } from 'commander';
import { assignmentWords, playedWords } from '../core/progress/assignment-words.ts';
import { dayNumber, dayOf } from '../core/progress/day-number.ts';
import { nextWords } from '../core/progress/next-words.ts';
import { realChanges } from '../core/progress/periods-compared.ts';
import { minuteWords } from '../core/progress/practice-words.ts';
import { verdictWords } from '../core/progress/progress-words.ts';
import { weakWords } from '../core/progress/weak-line-words.ts';
import { counted } from '../core/result/figures.ts';
import { measureName } from '../core/result/names.ts';
import { type LessonOfPlayer, lessonOf, lessonsOf } from '../library/lesson.ts';
import type { LibraryDb } from '../library/library.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer } from './library/find-player.ts';
import { checkDayOption } from './library/keep-options.ts';
import { localDay } from './library/local-day.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './library/with-library.ts';
import { checkOutputPaths } from './output-paths.ts';
import { printable } from './text-layout.ts';
import { writePage } from './write-page.ts';

interface Options extends LibraryOption {
  readonly player?: string;
  readonly since?: string;
  readonly json?: true;
  readonly report?: string;
}

const help = `
Examples:
  evenhand lesson --player Mirelle --report mirelle.html
  evenhand lesson --since 2026-01-01

Without --player one page for all. Without --since the week up to today. What changed since is held
against the twelve weeks before, and said only where three days on each side carry it.
`;

/** Lessons are a week apart, common practice. */
const usualDays = 7;

/** The command that prepares a lesson: what was asked, what was played, what is weakest, what changed. */
export function lessonCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('lesson')
    .description('Prepare a lesson: what was asked and played since the last one, and what changed.')
    .option('--player <name>', 'with one player; with all of them without')
    .option('--since <day>', 'the day of the last lesson, such as 2026-01-01 (a week ago)')
    .option('--json', 'write JSON')
    .option('--report <file>', 'write a page to open in a browser or to print')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action(({ player, since: typed, json, report, ...option }: Options) =>
    inLibrary(option, async (library) => {
      const { db } = library;
      if (report !== undefined) checkOutputPaths({ report }, undefined, []);
      if (typed !== undefined) checkDayOption('since', typed);
      const today = localDay(new Date());
      if (typed !== undefined && typed > today)
        throw new CommandFault(
          'usage',
          `--since ${typed} lies in the future. Write the day of the last lesson.`,
        );
      const since = typed ?? dayOf(dayNumber(today) - usualDays);
      const lessons =
        player === undefined
          ? await lessonsOf(db, { since, today })
          : [await lessonWith(db, player, { since, today })];
      if (report !== undefined) {
        const { lessonHtml, lessonsHtml } = await import('./weeks/lesson-html.ts');
        const html =
          player === undefined
            ? await lessonsHtml(since, today, lessons)
            : await lessonHtml(library, lessons[0]!.player, lessons[0]!.lesson);
        writePage(report, html, output);
        if (report === '-') return;
      }
      if (json) return output.stdout(`${JSON.stringify(lessons, null, 2)}\n`);
      output.stdout(`${lessons.map(lessonText).join('\n\n')}\n`);
    }),
  );
}

async function lessonWith(
  db: LibraryDb,
  typed: string,
  days: { readonly since: string; readonly today: string },
): Promise<LessonOfPlayer> {
  const { id, name } = await findPlayer(db, typed);
  return { player: name, lesson: await lessonOf(db, { personId: id, ...days }) };
}

function lessonText({ player, lesson }: LessonOfPlayer): string {
  const { assignments, since, today, days, weakest, exercises, discomfortDays } = lesson;
  const takes = days.reduce((sum, day) => sum + day.takes, 0);
  const minutes = days.reduce((sum, day) => sum + day.recordedMinutes + day.writtenMinutes, 0);
  const changes = exercises.flatMap(({ exercise, compared }) =>
    realChanges(compared).map(
      ({ figure, verdict }) =>
        `  Changed: ${printable(exercise.label)}, ${measureName(figure).toLowerCase()} ${verdictWords[verdict]}`,
    ),
  );
  return [
    `${printable(player)}, since ${since}`,
    ...discomfortDays.map((day) => `  Discomfort noted on ${day}: no faster tempo; ask first.`),
    ...assignments.map(
      ({ assignment, plays }) =>
        `  Asked: ${printable(assignment.title) || 'a sheet'}; ${assignmentWords(assignment, today)}; ${playedWords(plays)}`,
    ),
    `  Played: ${counted(takes, 'take')} on ${counted(days.length, 'day')}, ${minuteWords(minutes)}`,
    ...weakest.map(
      (line) =>
        `  Weakest: ${printable(line.label)}, ${weakWords(line)}${line.apart ? '; clearly weaker than the others' : ', not clearly apart from the others'}`,
    ),
    ...(changes.length > 0 || takes === 0 ? changes : ['  Changed: nothing that these days can show']),
    ...(discomfortDays.length > 0 ? [] : exercises).map(
      ({ exercise, next }) => `  Next: ${printable(exercise.label)}, ${nextWords(next)}`,
    ),
  ].join('\n');
}
