import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { TakeTruth } from '../../fixtures/generator/take-truth.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runProgram, sampleTakePath } from './built-program.ts';

const take = sampleTakePath('accent-one');
const truthOf = (path: string): TakeTruth =>
  JSON.parse(readFileSync(path.replace(/wav$/, 'truth.json'), 'utf8'));
const truth = truthOf(take);

describe('strokes', () => {
  it('writes a line for each stroke: time with six decimals, level with two', () => {
    const { status, stdout, stderr } = runProgram(['strokes', take]);
    expect([status, stderr]).toEqual([0, '']);
    const lines = stdout.trimEnd().split('\n');
    expect(lines).toHaveLength(truth.strokes.length);
    lines.forEach((line, i) => {
      expect(line).toMatch(/^\d+\.\d{6}\t-?\d+\.\d{2}$/);
      expect(Math.abs(Number(line.split('\t')[0]) - truth.strokes[i]!.time)).toBeLessThan(0.001);
    });
  });

  it('adds errors, class and other sounds with --all', () => {
    const path = sampleTakePath('stick-count-in');
    const countIn = truthOf(path);
    const { stdout } = runProgram(['strokes', path, '--all']);
    const rows = stdout
      .trimEnd()
      .split('\n')
      .map((line) => line.split('\t'));
    for (const row of rows) expect(row).toHaveLength(5);
    expect(rows.filter((row) => row[4] === 'pad')).toHaveLength(48);
    for (const { time } of countIn.otherSounds) {
      const nearest = rows.toSorted(
        (a, b) => Math.abs(Number(a[0]) - time) - Math.abs(Number(b[0]) - time),
      )[0]!;
      expect(Math.abs(Number(nearest[0]) - time)).toBeLessThan(0.001);
      expect(['stick-click', 'voice', 'other']).toContain(nearest[4]);
    }
    const times = rows.map((row) => Number(row[0]));
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });

  it('writes the same as JSON', () => {
    const plain = runProgram(['strokes', take]).stdout;
    const { sounds, recording } = JSON.parse(runProgram(['strokes', take, '--json']).stdout);
    expect(recording).toBe('accent-one.wav');
    const lines = sounds.time.map(
      (time: number, i: number) => `${time.toFixed(6)}\t${sounds.levelDb[i].toFixed(2)}\n`,
    );
    expect(lines.join('')).toBe(plain);
  });

  it('hears the same through a pipe', () => {
    const piped = runProgram(['strokes', '-'], { input: readFileSync(take) });
    expect(piped).toEqual(runProgram(['strokes', take]));
  });

  it('writes nothing where nothing is heard, and says so', () => {
    const path = join(temporaryFolder(), 'silent.wav');
    const silence = { channels: [new Float32Array(44100)], sampleRate: 44100, depth: 'int16' } as const;
    writeFileSync(path, writeWav(silence));
    const { status, stdout, stderr } = runProgram(['strokes', path]);
    expect([status, stdout]).toEqual([0, '']);
    expect(stderr).toMatch(/^No strokes were found\. .+\n$/);
    expect(JSON.parse(runProgram(['strokes', path, '--json']).stdout).sounds.time).toEqual([]);
  });

  it('says what it cannot read', () => {
    expect(runProgram(['strokes', 'no-such.wav'])).toEqual({
      status: 3,
      stdout: '',
      stderr: 'There is no file "no-such.wav" here. Check its name and its folder.\n',
    });
  });
});
