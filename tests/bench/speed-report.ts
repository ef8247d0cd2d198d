import { figure, markdownTable } from './markdown-table.ts';
import type { Timing } from './run-timed.ts';
import type { TimeShares } from './time-shares.ts';

/** One job on one file. */
export interface SpeedRow extends Timing {
  readonly job: string;
  readonly kind: string;
  readonly seconds: number;
}

/** The text of reports/speed.md. */
export function speedReport(
  rows: readonly SpeedRow[],
  runs: number,
  machine: string,
  shares: ReadonlyMap<string, TimeShares> = new Map(),
): string {
  const table = rows.map(({ job, kind, seconds, wallSeconds, userSeconds, mostMegabytes }) => [
    job,
    kind,
    String(seconds),
    ...[wallSeconds, userSeconds].map((value) => figure(value, 2)),
    figure(seconds / wallSeconds, 0),
    figure(seconds / userSeconds, 0),
    figure(mostMegabytes, 0),
  ]);
  const takes = [...shares.keys()];
  const jobs = [...(shares.values().next().value?.keys() ?? [])];
  const goes = jobs.map((job) => [job, ...takes.map((take) => figure(shares.get(take)!.get(job)!, 0))]);
  return `# Speed

**These figures depend on the machine and on what else it does: ${machine}.** Compare rows of this table with
one another, not with a table made elsewhere.

The whole process is timed, from its start to its end, on rendered files of 48 kHz, 16 bits, one channel (triplets at
120 BPM); median of ${runs} runs after one to warm up. "Times real time": length of the recording over wall time, and over
user time, which suffers less from what else runs. "Memory": the most that was resident in any run. Where the load
before and after is above the number of processors, wall times say little.

Made by \`npm run bench\` or, after \`npm run build\`, \`npx tsx tests/bench/speed.ts [runs]\`.

${markdownTable(['job', 'take', 'length, s', 'wall, s', 'user, s', 'times real time', 'by user time', 'memory, MB'], table)}
${takes.length === 0 ? '' : whereItGoes(markdownTable(['ms', ...takes], goes))}`;
}

const whereItGoes = (table: string) => `
## Where the time of grading goes

One run of each under V8's profiler (a sample every 0.1 ms, which slows it by about a tenth), ms.

${table}
`;
