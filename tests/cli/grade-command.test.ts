import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runProgram, sampleSheetPath, sampleTakePath } from './built-program.ts';

const take = sampleTakePath('accent-one');
const played = ['--exercise', '>RLR >LRL', '--bpm', '144', '--times', '9'];
const grade = (...args: string[]) => runProgram(['grade', take, ...played, ...args]);

describe('grade', () => {
  it('writes the summary on stdout and nothing else', () => {
    const { status, stdout, stderr } = grade();
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('54 strokes heard for 54 written.');
    expect(stdout).toContain('accent-one.wav');
  });

  it('understands a sheet as it does the same in options', () => {
    const bySheet = runProgram(['grade', take, '--sheet', sampleSheetPath('accent-one'), '--json']);
    const byOptions = grade('--json');
    const [a, b] = [bySheet, byOptions].map(({ stdout }) => validateTakeResult(JSON.parse(stdout)));
    expect(a!.measures).toEqual(b!.measures);
    expect(a!.sheet.lines).toEqual(b!.sheet.lines);
  });

  it('reads a take from a pipe', () => {
    const input = readFileSync(take);
    const piped = runProgram(['grade', '-', ...played, '--json'], { input });
    const result = validateTakeResult(JSON.parse(piped.stdout));
    const hash = createHash('sha256').update(input).digest('hex');
    expect(result.recording).toMatchObject({ name: 'standard input', sha256: hash });
    expect(result.strokes.time).toHaveLength(54);
  });

  it.each([['--json'], ['--json=-'], ['--json', '-']])(
    'writes the result on stdout alone for %s %s',
    (...args) => {
      const { status, stdout, stderr } = grade(...args);
      expect([status, stderr]).toEqual([0, '']);
      expect(validateTakeResult(JSON.parse(stdout)).grading).toEqual({ state: 'graded' });
    },
  );

  it('writes every form at once, each whole, and says where', () => {
    const folder = temporaryFolder();
    const at = (name: string) => join(folder, name);
    const { status, stdout, stderr } = grade(
      ...['--json', at('a.json'), '--csv', at('a.csv'), '--report', at('a.html'), '--pictures', at('drawn')],
    );
    expect(status).toBe(0);
    expect(stdout).toContain('54 strokes heard');
    for (const name of ['a.json', 'a.csv', 'a.html', 'drawn']) expect(stderr).toContain(at(name));
    expect(readdirSync(folder).sort()).toEqual(['a.csv', 'a.html', 'a.json', 'drawn']);

    const result = validateTakeResult(JSON.parse(readFileSync(at('a.json'), 'utf8')));
    const lines = readFileSync(at('a.csv'), 'utf8').split('\r\n');
    expect(lines).toHaveLength(1 + result.strokes.time.length + 1);
    expect(lines.at(-1)).toBe('');
    expect(Number(lines[1]!.split(',')[0])).toBe(result.strokes.time[0]);
    expect(readFileSync(at('a.html'), 'utf8')).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/);
    const pngSignature = '89504e470d0a1a0a'; // PNG specification (W3C), 5.2
    const pictures = readdirSync(at('drawn'));
    expect(pictures.length).toBeGreaterThanOrEqual(4);
    for (const picture of pictures)
      expect(readFileSync(join(at('drawn'), picture)).toString('hex', 0, 8)).toBe(pngSignature);
  });

  it('puts the sound of the take into the report unless told not to', () => {
    const folder = temporaryFolder();
    const [path, silent] = [join(folder, 'a.html'), join(folder, 'b.html')];
    grade('--report', path);
    expect(readFileSync(path, 'utf8')).toMatch(/<audio [^>]*src="data:audio\/mpeg;base64,[^"]{1000,}"/);
    grade('--report', silent, '--no-sound');
    expect(readFileSync(silent, 'utf8')).not.toContain('<audio');
  });

  it('scores by the rubric that is named or given as a file', () => {
    const folder = temporaryFolder();
    const file = join(folder, 'class.json');
    writeFileSync(
      file,
      JSON.stringify({ basedOn: 'steady', id: 'tuesday', dimensions: { hands: { weight: 0 } } }),
    );
    const scores = (name: string) =>
      validateTakeResult(JSON.parse(grade('--rubric', name, '--json').stdout)).scores!;
    expect(scores('advanced').rubric).toBe('advanced');
    expect(scores('advanced').overall.score).toBeLessThan(scores('first-years').overall.score);
    expect(scores(file).rubric).toBe('tuesday');
    expect(scores(file).dimensions.map(({ id }) => id)).not.toContain('hands');
  });

  it('gives no tempo to try when something hurts', () => {
    const { stdout } = grade('--discomfort');
    expect(stdout).toContain('You noted discomfort');
    expect(stdout).not.toMatch(/go up|Start between/);
  });

  it('tells in result and summary that the end of the file is missing', () => {
    const path = join(temporaryFolder(), 'cut.wav');
    writeFileSync(path, readFileSync(take).subarray(0, 44 + 2 * 22050 * 6));
    const { status, stdout } = runProgram(['grade', path, ...played]);
    expect(status).toBe(0);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/The recording breaks off: \d\.\d s at its end are missing/);
  });

  it('replaces a report that is there and leaves the take as it is', () => {
    const folder = temporaryFolder();
    const copy = join(folder, 'take.wav');
    copyFileSync(take, copy);
    writeFileSync(join(folder, 'a.csv'), 'old');
    runProgram(['grade', 'take.wav', ...played, '--csv', 'a.csv'], { folder });
    expect(readFileSync(join(folder, 'a.csv'), 'utf8')).toMatch(/^time_s,/);
    expect(readFileSync(copy).equals(readFileSync(take))).toBe(true);
  });

  it('leaves the tempo to be found when none is given', () => {
    const { stdout } = runProgram(['grade', take, '--exercise', '>RLR >LRL', '--times', '9', '--json']);
    const result = validateTakeResult(JSON.parse(stdout));
    expect(result.reference.kind).toBe('fitted-tempo');
    expect(result.segments[0]!.bpm).toBeGreaterThan(143);
    expect(result.segments[0]!.bpm).toBeLessThan(145);
  });

  it('does not write over what it reads, nor two things to one place', () => {
    const folder = temporaryFolder();
    copyFileSync(take, join(folder, 'take.wav'));
    const run = (...args: string[]) => runProgram(['grade', 'take.wav', ...played, ...args], { folder });
    for (const args of [
      ['--json', './take.wav'],
      ['--json', 'same', '--csv', 'same'],
      ['--json', '-', '--csv', '-'],
    ]) {
      expect(run(...args)).toMatchObject({ status: 2, stdout: '', stderr: expect.stringMatching(/already/) });
    }
    expect(readdirSync(folder)).toEqual(['take.wav']);
    expect(readFileSync(join(folder, 'take.wav')).equals(readFileSync(take))).toBe(true);
  });

  it('does not take the recording for the file of --json', () => {
    const { status, stderr } = runProgram(['grade', '--json', 'new-take.wav', ...played]);
    expect(status).toBe(2);
    expect(stderr).toContain('"new-take.wav" was taken as the file for --json');
    expect(existsSync('new-take.wav')).toBe(false);
  });
});
