import { describe, expect, it } from 'vitest';
import { measuresCommand } from '../../src/cli/measures-command.ts';
import { measures } from '../../src/core/measures/index.ts';
import { runCommand } from './run-command.ts';

const run = (...args: string[]) => runCommand(measuresCommand, args);

describe('measures command', () => {
  it('lists every measure with its name and what it says', async () => {
    const { stdout, stderr } = await run();
    for (const { id } of measures) expect(stdout).toMatch(new RegExp(`^${id} +\\S`, 'm'));
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    expect(stderr).toContain(`${measures.length} measures`);
  });

  it.each(measures.map(({ id, title }) => [id, title] as const))('tells all about %s', async (id, title) => {
    const { stdout, exitCode } = await run(id);
    expect(exitCode).toBe(0);
    expect(stdout).toMatch(new RegExp(`\\(${id}\\)`));
    for (const head of ['Formula', 'Range', 'How to read it', 'Its limits', 'Source'])
      expect(stdout, head).toContain(`\n${head}\n  `);
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    expect((await run(title)).stdout).toBe(stdout);
  });

  it('writes the same as JSON, all or one', async () => {
    const all = JSON.parse((await run('--json')).stdout) as { id: string }[];
    expect(all.map(({ id }) => id)).toEqual(measures.map(({ id }) => id));
    const one = JSON.parse((await run('timing-spread-share', '--json')).stdout);
    expect(one).toEqual(all[1]);
    expect(one.points[1]).toMatchObject({ rubric: 'steady', perfect: 0, secure: 5, nearly: 10 });
  });

  it('names the nearest where there is none of that name', async () => {
    const { stdout, stderr, exitCode } = await run('timing-spred');
    expect([stdout, exitCode]).toEqual(['', 2]);
    expect(stderr).toContain('Did you mean timing-spread?');
  });
});
