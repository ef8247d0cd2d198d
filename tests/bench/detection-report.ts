import { tunedGroups } from './bench-takes.ts';
import type { HeardTake } from './hear-take.ts';
import { figure, markdownTable } from './markdown-table.ts';
import type { ScoresByFinder } from './other-finders.ts';
import { type PooledScore, poolScores } from './pool-scores.ts';
import type { TakeScore } from './score-take.ts';

const head = [
  ...['strokes', 'F ±10 ms', 'F ±3 ms', 'worst take', 'recall', 'precision'],
  ...['time, median ms', 'time, 95 % ms', 'accent bias, ms', 'level, median dB', 'level, 95 % dB'],
  ...['ratio bias, dB', 'worst', 'time error / SE', 'level error / SE'],
];

function cells(p: PooledScore): string[] {
  const spread = (sd: number, beyond: number) => `${figure(sd, 2)} (${figure(100 * beyond, 0)} %)`;
  return [
    String(p.strokes),
    ...[p.f10, p.f3, p.worstF10, p.recall, p.precision].map((value) => figure(value, 4)),
    ...[p.timeMedianMs, p.timeP95Ms, p.accentBiasMs].map((value) => figure(value, 3)),
    ...[p.levelMedianDb, p.levelP95Db, p.ratioBiasDb, p.ratioWorstDb].map((value) => figure(value, 2)),
    spread(p.timeSpread, p.timeBeyond3),
    spread(p.levelSpread, p.levelBeyond3),
  ];
}

const names = (heard: readonly HeardTake[], of: 'group' | 'take') => [
  ...new Set(heard.map(({ score }) => score[of])),
];
const sum = (list: readonly HeardTake[], of: (one: HeardTake) => number) =>
  list.reduce((total, one) => total + of(one), 0);
const pooled = (list: readonly HeardTake[]) => poolScores(list.map(({ score }) => score));

/** All that is told of: every take heard, and those that the programs of others heard as well. */
export interface DetectionResults {
  readonly heard: readonly HeardTake[];
  readonly seeds: readonly number[];
  readonly compared: readonly HeardTake[];
  readonly comparedSeeds: readonly number[];
  readonly others: ScoresByFinder;
  readonly notices: readonly string[];
}

/** The text of reports/detection.md: deterministic, for it holds no times taken. */
export function detectionReport(results: DetectionResults): string {
  const { heard, seeds, compared, comparedSeeds, others, notices } = results;
  const groups = names(heard, 'group');
  const ofGroup = (group: string) => heard.filter(({ score }) => score.group === group);
  const ofTake = (take: string) => heard.filter(({ score }) => score.take === take);
  const seen = (group: string) => (tunedGroups.includes(group) ? 'yes' : 'no');
  const byGroup = groups.map((group) => [group, seen(group), ...cells(pooled(ofGroup(group)))]);
  const byTake = names(heard, 'take').map((take) => [take, ...cells(pooled(ofTake(take)))]);
  const clicks = groups
    .map((group) => ({ group, takes: ofGroup(group) }))
    .map(({ group, takes }) => ({
      group,
      there: sum(takes, (one) => one.clicks.there),
      found: sum(takes, (one) => one.clicks.found),
      claimed: sum(takes, (one) => one.clicks.claimed),
    }))
    .filter(({ there, claimed }) => there > 0 || claimed > 0)
    .map(({ group, there, found, claimed }) => [group, ...[there, found, claimed - found].map(String)]);
  return `# Stroke finding

Rendered takes with exactly known strokes, seeds ${seeds.join(', ')}. Kinds of take marked "yes" were looked at, with other
seeds, when constants were set; those marked "no" were only ever measured. "Real" and "held-out strokes" are takes made
of recorded drum and body percussion strokes, each varied in pitch, brightness and tail.

Matching is one to one, as many pairs as can be; the constant part of the times (up to 3 ms) and of the levels is taken
off each take. A stroke counts as found only if it is taken for a stroke on the pad. Bounces of the stick may be found
or not. Levels are held against the same definition on the stroke alone, dry.

- Accent bias: median error of accents minus that of the others, the worst take.
- Ratio bias: the same for levels, mean over takes, and the worst.
- Error / SE: the error over the standard error the program itself states, spread of the middle two thirds (1 is
  right), and the share beyond three.

Where a recorded stroke begins is unknown by some tenths of a millisecond, so accent bias says little there.

Made by \`npm run bench\` or \`npx tsx tests/bench/detection.ts [seeds] [part of a name]\`.
${notices.length > 0 ? `\n${notices.map((notice) => `- ${notice}`).join('\n')}\n` : ''}
## By kind of take

${markdownTable(['kind', 'looked at', ...head], byGroup)}

## Beside general-purpose onset finders

F ±10 ms / F ±3 ms on the same files, seeds ${comparedSeeds.join(', ')}. These programs find onsets of any sound and don't claim
to tell strokes from clicks or talk, so what they find there isn't held against them; each has its best constant offset
of up to 40 ms taken off. The one threshold of aubio that isn't its own was chosen for the best mean F on the first
seed, in its favour.

${othersTable(compared, others, groups)}

Median / 95 % of the time error of matched strokes, ms:

${timesTable(compared, others, groups)}

## Clicks of a metronome

${markdownTable(['kind', 'clicks', 'found', 'claimed where none is'], clicks)}

## What went wrong

Every take with F ±10 ms below 0.995.

${faultsTable(heard)}

## By take

${markdownTable(['take', ...head], byTake)}
`;
}

const ownName = 'Evenhand';

function finderRows(heard: readonly HeardTake[], others: ScoresByFinder): [string, readonly TakeScore[]][] {
  return [[ownName, heard.map(({ score }) => score)], ...others];
}

function othersTable(heard: readonly HeardTake[], others: ScoresByFinder, groups: readonly string[]): string {
  const rows = finderRows(heard, others).map(([name, scores]) => [
    name,
    ...groups.map((group) => {
      const { f10, f3 } = poolScores(scores.filter((score) => score.group === group));
      return `${figure(f10, 3)} / ${figure(f3, 3)}`;
    }),
  ]);
  return markdownTable(['finder', ...groups], rows);
}

function timesTable(heard: readonly HeardTake[], others: ScoresByFinder, groups: readonly string[]): string {
  const rows = finderRows(heard, others).map(([name, scores]) => [
    name,
    ...groups.map((group) => {
      const { timeMedianMs, timeP95Ms } = poolScores(scores.filter((score) => score.group === group));
      return `${figure(timeMedianMs, 2)} / ${figure(timeP95Ms, 2)}`;
    }),
  ]);
  return markdownTable(['finder', ...groups], rows);
}

function faultsTable(heard: readonly HeardTake[]): string {
  const bad = names(heard, 'take')
    .map((take) => heard.filter(({ score }) => score.take === take))
    .filter((list) => pooled(list).worstF10 < 0.995)
    .map((list) => {
      const { f10, worstF10, strokes } = pooled(list);
      const found = sum(list, ({ score }) => score.within10Ms);
      const attacks = sum(list, ({ anyClass }) => anyClass);
      const surplus = sum(list, ({ score }) => score.surplus.length);
      const place = `${list[0]!.score.take} (${list[0]!.score.group})`;
      return [
        ...[place, figure(f10, 4), figure(worstF10, 4), String(strokes)],
        ...[strokes - attacks, Math.max(0, attacks - found), surplus].map(String),
      ];
    });
  const columns = [
    'take',
    'F ±10 ms',
    'worst take',
    'strokes',
    'not heard',
    'taken for another sound',
    'none there',
  ];
  return markdownTable(columns, bad);
}
