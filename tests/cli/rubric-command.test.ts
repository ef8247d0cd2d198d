import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CommandFault } from '../../src/cli/command-fault.ts';
import { rubricCommand, rubricToStartFrom } from '../../src/cli/rubric-command.ts';
import { readRubric } from '../../src/core/scoring/read-rubric.ts';
import { rubrics } from '../../src/core/scoring/rubrics/index.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runCommand } from './run-command.ts';

const run = (...args: string[]) => runCommand(rubricCommand, args);

const file = (value: unknown): string => {
  const path = join(temporaryFolder(), 'mine.json');
  writeFileSync(path, typeof value === 'string' ? value : JSON.stringify(value));
  return path;
};

async function faultOf(path: string): Promise<CommandFault> {
  try {
    await run(path);
  } catch (error) {
    if (error instanceof CommandFault) return error;
    throw error;
  }
  throw new Error('the rubric was accepted');
}

describe('rubric command', () => {
  it('lists the rubrics that ship', async () => {
    const { stdout, stderr } = await run();
    expect(stdout.trimEnd().split('\n')).toHaveLength(rubrics.length);
    for (const { id, title } of rubrics) expect(stdout).toMatch(new RegExp(`^${id} +${title}$`, 'm'));
    expect(stderr).toContain('evenhand rubric NAME');
  });

  it('shows every criterion with its points, and where they come from', async () => {
    const { stdout } = await run('steady');
    expect(stdout).toMatch(/^ {2}Timing spread +0\.0 % +5\.0 % +10\.0 % +1\.0$/m);
    expect(stdout).toMatch(/^ {2}Accents above taps +8 to 20 dB +1\.0 dB +3\.0 dB +2\.0$/m);
    expect(stdout).toMatch(/^ {2}Accent beats tap +100\.0 % +1\.0 % +5\.0 % +1\.0$/m);
    expect(stdout).toContain('Friberg & Sundberg 1995');
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(90);
  });

  it.each(rubrics)('gives a file to start from that says the same: $id', async (rubric) => {
    const { stdout } = await run(rubric.id, '--json');
    const { dimensions } = readRubric(JSON.parse(stdout));
    expect(dimensions).toEqual(rubric.dimensions);
    expect(JSON.parse(stdout)).toEqual(rubricToStartFrom(rubric));
  });

  it('starts from the middle one when none is named', async () => {
    expect(JSON.parse((await run('--json')).stdout).basedOn).toBe('steady');
  });

  it("shows a teacher's file", async () => {
    const { stdout } = await run(
      file({ basedOn: 'steady', title: 'Tuesday class', measures: { 'tap-spread': { secure: 2 } } }),
    );
    expect(stdout).toMatch(/^Tuesday class \(steady-changed\)/);
    expect(stdout).toMatch(/^ {2}Spread of the taps +0\.0 dB +2\.0 dB +3\.0 dB/m);
    expect(stdout).toContain('Spread of the taps: the rubric file.');
  });

  it.each([
    [{ basedOn: 'strict' }, '/basedOn is "strict". Allowed: first-years, steady, advanced.'],
    [
      { basedOn: 'steady', measures: { 'tap-spread': { secure: 4 } } },
      'Allowed: secure smaller than nearly.',
    ],
    ['{', 'is not valid JSON'],
  ])('says what is wrong with %j', async (value, told) => {
    const fault = await faultOf(file(value));
    expect(fault.exitCode).toBeGreaterThan(0);
    expect(fault.message).toContain(told);
  });

  it('knows no rubric of another name', async () => {
    expect((await faultOf('strict')).message).toContain('Choose one of first-years, steady, advanced');
  });
});
