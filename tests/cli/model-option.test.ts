import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { type Ending, runProgram, sampleTakePath } from './built-program.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
afterAll(() => rmSync(folder, { recursive: true }));
const played = ['--exercise', '>RLR >LRL', '--bpm', '144', '--times', '9'];
const grade = (...args: string[]): Ending =>
  runProgram(['grade', sampleTakePath('accent-one'), ...played, ...args], { folder });
beforeAll(() => {
  grade('--json', 'teacher.json');
});
const teacher = (): TakeResult =>
  validateTakeResult(JSON.parse(readFileSync(join(folder, 'teacher.json'), 'utf8')));
const write = (name: string, text: string) => writeFileSync(join(folder, name), text);

describe('--model', () => {
  it('holds a take against a result of the same line, in the result and in the summary', () => {
    const { status, stdout } = grade('--model', 'teacher.json', '--json');
    expect(status).toBe(0);
    const { model, ...rest } = validateTakeResult(JSON.parse(stdout));
    expect(rest).toEqual(teacher());
    expect(model!.name).toBe('accent-one.wav');
    expect(model!.measures).toHaveLength(6);
    // The same take: no difference at all.
    for (const { outcome } of model!.measures) expect(outcome).toMatchObject({ state: 'measured', value: 0 });

    const text = grade('--model', 'teacher.json').stdout;
    expect(text).toContain('Against the model');
    expect(text).toMatch(/ partial 1, accent +0\.0 +−\d\.\d to \d\.\d +(like the model|can't be told yet)/);
  });

  it('says nothing of a model without one', () => {
    expect(grade().stdout).not.toMatch(/model/i);
    expect(teacher()).not.toHaveProperty('model');
  });

  it.each([
    ['of another exercise', (): string => JSON.stringify(otherLine()), 2, /The model is of another exercise/],
    ['of a take without a grade', (): string => JSON.stringify(ungraded()), 3, /a take without a grade/],
    ['that is no result', (): string => '{"schema":"something"}', 3, /It is not the result of a take/],
    [
      'of a newer program',
      (): string => JSON.stringify({ ...teacher(), version: 999 }),
      3,
      /A newer version/,
    ],
    ['that is no JSON', (): string => 'hello', 3, /It is not valid JSON/],
  ] as const)('refuses a model %s in one sentence', (_, text, status, message) => {
    write('model.json', text());
    const ending = grade('--model', 'model.json');
    expect([ending.status, ending.stdout]).toEqual([status, '']);
    expect(ending.stderr).toMatch(/^The model "model.json"/);
    expect(ending.stderr).toMatch(message);
    expect(ending.stderr.trim().split('\n')).toHaveLength(1);
  });

  it('says that a file is missing, and does not write over the model', () => {
    expect(grade('--model', 'nowhere.json')).toMatchObject({ status: 3, stderr: /There is no model/ });
    expect(grade('--model', 'teacher.json', '--json', 'teacher.json').status).toBe(2);
    expect(teacher().grading.state).toBe('graded');
  });
});

function otherLine(): TakeResult {
  const { sheet, ...rest } = teacher();
  return {
    ...rest,
    sheet: { ...sheet, lines: sheet.lines.map((line) => ({ ...line, notation: 'RRL RRL' })) },
  };
}

function ungraded(): TakeResult {
  return {
    ...teacher(),
    grading: { state: 'not-gradable', reason: { code: 'silent-take', facts: {} } },
  };
}
