import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { median } from '../../src/core/stats/median.ts';

/** What one program needs for one job: medians over runs. */
export interface Timing {
  readonly wallSeconds: number;
  readonly userSeconds: number;
  /** The largest of all runs; NaN where it can't be measured. */
  readonly mostMegabytes: number;
}

const gnuTime = '/usr/bin/time';

/**
 * Runs a program for warming up, mostly once, and `runs` times for measuring, from its start to its end. GNU time measures;
 * throws where it is missing or the program fails.
 */
export function runTimed(program: string, args: readonly string[], runs: number, warmUps = 1): Timing {
  if (!existsSync(gnuTime)) throw new Error('GNU time is not installed (Debian: time).');
  const measured = Array.from({ length: runs + warmUps }, () => {
    const from = process.hrtime.bigint();
    const { status, stderr } = spawnSync(gnuTime, ['-f', '%U %M', program, ...args], {
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    const wallSeconds = Number(process.hrtime.bigint() - from) / 1e9;
    if (status !== 0) throw new Error(`${program} ${args.join(' ')} failed: ${stderr}`);
    const [userSeconds, kilobytes] = readGnuTime(stderr);
    return { wallSeconds, userSeconds, kilobytes };
  }).slice(warmUps);
  return {
    wallSeconds: median(measured.map((one) => one.wallSeconds)),
    userSeconds: median(measured.map((one) => one.userSeconds)),
    mostMegabytes: Math.max(...measured.map((one) => one.kilobytes)) / 1024,
  };
}

/** User seconds and most memory in kB from the last line that GNU time wrote with the format `%U %M`. */
export function readGnuTime(stderr: string): [userSeconds: number, kilobytes: number] {
  const [user, memory] = (stderr.trimEnd().split('\n').at(-1) ?? '').split(' ').map(Number);
  if (user === undefined || memory === undefined || Number.isNaN(user + memory)) {
    throw new Error(`no times in: ${stderr}`);
  }
  return [user, memory];
}
