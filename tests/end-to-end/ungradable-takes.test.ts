import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { writeWav } from '../../src/formats/write-wav.ts';
import { runProgram, sampleTakePath } from '../cli/built-program.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';

const sampleRate = 22050;
const wav = (samples: Float32Array) => writeWav({ channels: [samples], sampleRate, depth: 'int16' });
const asked = ['--exercise', '>RLR >LRL', '--bpm', '144', '--times', '9'];

/** Strikes that die away within some hundredths of a second, at the times given. */
function strikes(times: readonly number[], seconds: number): Float32Array {
  const samples = new Float32Array(seconds * sampleRate);
  for (const time of times) {
    for (let i = 0; i < 2000; i++) {
      const at = Math.round(time * sampleRate) + i;
      if (at < samples.length)
        samples[at]! += 0.4 * Math.exp(-i / 150) * Math.sin((2 * Math.PI * 900 * i) / sampleRate);
    }
  }
  return samples;
}

/** Takes that can be read but not graded. */
const ungradable: readonly (readonly [string, Float32Array, RegExp])[] = [
  ['a silent take', new Float32Array(3 * sampleRate), /The recording is silent/],
  ['a single stroke', strikes([1.2], 3), /Only 1 stroke was found, though the exercise asks for 54/],
];

describe('takes that cannot be graded', () => {
  it.each(ungradable)('%s: exit code 4, and every form says why', (_, samples, reason) => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'take.wav'), wav(samples));
    const { status, stdout, stderr } = runProgram(
      ['grade', 'take.wav', ...asked, '--json', 'r.json', '--report', 'r.html', '--csv', 'r.csv'],
      { folder },
    );
    expect(status).toBe(4);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(reason);
    expect(stdout).not.toContain('Scores');
    expect(stderr.trimEnd().split('\n')).toHaveLength(3);
    const result = validateTakeResult(JSON.parse(readFileSync(join(folder, 'r.json'), 'utf8')));
    expect(result).toMatchObject({ grading: { state: 'not-gradable' }, scores: null, measures: [] });
    expect(readFileSync(join(folder, 'r.html'), 'utf8')).toMatch(reason);
    const lines = readFileSync(join(folder, 'r.csv'), 'utf8').trimEnd().split('\r\n');
    expect(lines).toHaveLength(1 + result.strokes.time.length);
  });

  it('draws no pictures of them, and says so', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'take.wav'), wav(new Float32Array(sampleRate)));
    const { status, stderr } = runProgram(['grade', 'take.wav', ...asked, '--pictures', 'drawn'], { folder });
    expect([status, stderr]).toEqual([4, 'No pictures were drawn, as the take has no grade.\n']);
    expect(readdirSync(folder)).toEqual(['take.wav']);
  });
});

describe('takes that are not what was asked for', () => {
  const gradeSample = (...args: string[]) => {
    const ending = runProgram(['grade', sampleTakePath('accent-one'), ...args, '--json']);
    return { ...ending, result: validateTakeResult(JSON.parse(ending.stdout)) };
  };

  it('counts what a shorter take never reached as not reached, not as missed', () => {
    const { status, result } = gradeSample('--exercise', '>RLR >LRL', '--bpm', '144', '--times', '16');
    expect(status).toBe(0);
    expect(result.slots.state.filter((state) => state === 'missed')).toEqual([]);
    expect(result.slots.state.filter((state) => state === 'not-reached')).toHaveLength((16 - 9) * 6);
    expect(result.warnings).toContainEqual({
      code: 'part-not-played',
      facts: { notReached: (16 - 9) * 6, wanted: 16 * 6 },
    });
  });

  // Played at 144 BPM.
  it.each([78, 110, 262])('never invents a grade when %i BPM were asked for', (bpm) => {
    const { status, result } = gradeSample('--exercise', '>RLR >LRL', '--bpm', `${bpm}`, '--times', '9');
    if (status === 4) {
      expect(result).toMatchObject({ grading: { state: 'not-gradable' }, scores: null });
      return;
    }
    expect(status).toBe(0);
    for (const segment of result.segments) expect(Math.abs(segment.bpm / 144 - 1)).toBeLessThan(0.02);
    const told = result.warnings.find(({ code }) => code === 'tempo-far-off');
    expect(told?.facts.asked).toBe(bpm);
    const steadiness = result.scores?.dimensions.find(({ id }) => id === 'steadiness');
    expect(steadiness?.score.word).toBe('not-yet');
  });
});
