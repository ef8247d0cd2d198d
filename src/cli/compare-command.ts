import { Command } from 'commander';
import { periodsCompared } from '../core/progress/periods-compared.ts';
import { changeText, conditionList, figureText } from '../core/progress/progress-words.ts';
import { type TakeDifference, takeAgainstTake } from '../core/progress/take-against-take.ts';
import { counted } from '../core/result/figures.ts';
import { measureName } from '../core/result/names.ts';
import { exercisePlays } from '../library/exercise-plays.ts';
import { type OpenedTake, readTake } from '../library/read-take.ts';
import { takeConditions } from '../library/take-conditions.ts';
import { CommandFault } from './command-fault.ts';
import { type CommandOutput, toProcess } from './command-output.ts';
import { findPlayer } from './library/find-player.ts';
import { findTake } from './library/find-take.ts';
import { checkDayOption } from './library/keep-options.ts';
import { localTime } from './library/local-day.ts';
import { namedExercises } from './library/named-exercises.ts';
import { shortId } from './library/short-id.ts';
import { takeTitle } from './library/take-list.ts';
import { inLibrary, type LibraryOption, withLibraryOption } from './library/with-library.ts';
import { checkOutputPaths } from './output-paths.ts';
import { periodsText, table } from './progress-text.ts';
import { printable } from './text-layout.ts';
import { writePage } from './write-page.ts';

interface Options extends LibraryOption {
  readonly player?: string;
  readonly exercise?: string;
  readonly from?: string;
  readonly json?: true;
  readonly report?: string;
}

const help = `
Examples:
  evenhand compare 3f0a91c2 newest --report two-takes.html

Two takes: their figures beside each other, without a verdict, since one take is one day's form.
Two stretches of days, with verdicts, once there are three days on each side:
evenhand compare --player NAME --exercise NAME --from 2026-03-01
`;

/** The command that holds two takes, or the days before and after a day, against each other. */
export function compareCommand(output: CommandOutput = toProcess): Command {
  const command = new Command('compare')
    .description('Hold two takes, or two stretches of days, against each other.')
    .argument('[takes...]', 'two takes: their names on the list, or newest')
    .option('--player <name>', 'compare days of this player')
    .option('--exercise <name>', 'in this exercise')
    .option('--from <day>', 'the days before this one against those from it on')
    .option('--json', 'write JSON')
    .option('--report <file>', 'write a page with pictures and sound to open in a browser')
    .addHelpText('after', help)
    .configureOutput({ writeOut: output.stdout, writeErr: output.stderr });
  return withLibraryOption(command).action((typed: string[], options: Options) =>
    inLibrary(options, async (library) => {
      const { db } = library;
      const { player, exercise, from, json, report } = options;
      if (report !== undefined) checkOutputPaths({ report }, undefined, []);
      const page = async (html: (pages: typeof import('./weeks/compare-pages.ts')) => Promise<string>) => {
        if (report !== undefined)
          writePage(report, await html(await import('./weeks/compare-pages.ts')), output);
      };
      if (typed.length === 2 && player === undefined) {
        const [first, second] = await Promise.all(
          typed.map(async (name) => readTake(db, await findTake(db, name))),
        );
        if (first!.take.id === second!.take.id)
          throw new CommandFault(
            'usage',
            'Both names are the same take. Name two (`evenhand takes` lists them).',
          );
        const compared = takeAgainstTake(takeConditions(first!), takeConditions(second!));
        await page(({ takePairHtml }) => takePairHtml(library, first!, second!));
        if (report === '-') return;
        if (json) return output.stdout(`${JSON.stringify(compared, null, 2)}\n`);
        return output.stdout(`${differenceText(first!, second!, compared).join('\n')}\n`);
      }
      if (typed.length > 0 || player === undefined || exercise === undefined || from === undefined)
        throw new CommandFault('usage', whatToName(typed, { player, exercise, from }));
      checkDayOption('from', from);
      const { id: personId, name } = await findPlayer(db, player);
      const { id, label } = (await namedExercises(db, personId, exercise))[0]!;
      const plays = await exercisePlays(db, { personId, exerciseId: id });
      const compared = periodsCompared(plays, from);
      await page(({ periodsHtml }) =>
        periodsHtml({ player: name, exercise: label, fromDay: from, plays, compared }),
      );
      if (report === '-') return;
      if (json) return output.stdout(`${JSON.stringify(compared, null, 2)}\n`);
      output.stdout(`${printable(name)}: ${printable(label)}\n${periodsText(compared, from).join('\n')}\n`);
    }),
  );
}

/** What a command line that compares nothing yet needs. */
function whatToName(typed: readonly string[], days: Readonly<Record<string, string | undefined>>): string {
  const ways = 'Name two takes (`evenhand takes` lists them), or give --player, --exercise and --from';
  const given = Object.values(days).some((value) => value !== undefined);
  if (typed.length > 0 && given) return `Takes and days can't be compared at once. ${ways}.`;
  if (typed.length > 0) return `${counted(typed.length, 'take')} can't be compared. ${ways}.`;
  if (!given) return `Nothing to compare is named. ${ways}.`;
  const missing = Object.keys(days).filter((name) => days[name] === undefined);
  return `To compare days, add ${missing.map((name) => `--${name}`).join(' and ')}, too.`;
}

function differenceText(
  first: OpenedTake,
  second: OpenedTake,
  { likeness, figures }: TakeDifference,
): string[] {
  const head = ({ take }: OpenedTake) =>
    `${shortId(take.id)}  ${localTime(take.recordedAt)}  ${printable(take.personName ?? '–')}  ${takeTitle(take)}`;
  const rows = figures
    .filter(({ first: a, second: b }) => a !== null || b !== null)
    .map(({ figure, first: a, second: b, difference, withheld }) => {
      const cell = (one: typeof a) =>
        one === null
          ? 'not measured'
          : `${figureText(one.value, figure)} (${figureText(one.low, figure)} to ${figureText(one.high, figure)})`;
      const change =
        difference !== null
          ? figure.scale === 'ratio' && a!.value > 0
            ? changeText(b!.value / a!.value, figure)
            : changeText(difference, figure)
          : withheld === 'not-measured'
            ? ''
            : 'not compared';
      return [measureName(figure.id), cell(a), cell(b), change];
    });
  const notes = [
    ...(likeness.differ.length > 0 ? [`They differ in ${conditionList(likeness.differ)}.`] : []),
    ...(likeness.timing && !likeness.levels
      ? [`Levels aren't compared: the same pad, sticks and device must be noted with both.`]
      : []),
    ...(likeness.timing ? [] : ['Only takes of one exercise at one tempo and technique are compared.']),
    "One take against one: what differs is shown without a verdict, since one take is one day's form.",
  ];
  return [
    head(first),
    head(second),
    '',
    ...table([['', 'first', 'second', 'change'], ...rows]),
    '',
    ...notes,
  ];
}
