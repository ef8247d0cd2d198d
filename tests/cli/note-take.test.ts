import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { takeMidi } from '../../src/formats/take-midi.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { repository, runProgram, sampleSheetPath, sampleTakePath } from './built-program.ts';

const demo = JSON.parse(readFileSync(join(repository, 'reports/samples/demo.json'), 'utf8')) as TakeResult;
const midi = takeMidi(demo)!;

/** The demo take's notes in a folder of their own, and what grading them ends with. */
function noteTake(bytes: Uint8Array = midi) {
  const folder = temporaryFolder();
  const path = join(folder, 'take.mid');
  writeFileSync(path, bytes);
  const grade = (...args: string[]) =>
    runProgram(['grade', path, '--sheet', sampleSheetPath('demo'), ...args], { folder });
  return { folder, path, grade };
}

describe('the notes of an electronic pad', () => {
  let kept: TakeResult | undefined;
  const graded = () => {
    kept ??= validateTakeResult(JSON.parse(noteTake().grade('--json').stdout));
    return kept;
  };

  it('are graded as a take of their own kind', () => {
    expect(graded().grading.state).toBe('graded');
    expect(graded().recording).toMatchObject({ name: 'take.mid', levels: 'velocity' });
    const played = ({ slots }: TakeResult) => slots.state.filter((state) => state === 'played').length;
    expect(played(graded())).toBe(played(demo));
    expect(graded().recording.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(graded().warnings.map(({ code }) => code)).toContain('levels-are-velocities');
  });

  it('are chosen by key, where the file has several', () => {
    // takeMidi writes a key for each hand.
    expect(graded().warnings.map(({ code }) => code)).toContain('notes-of-several-keys');
    const right = validateTakeResult(JSON.parse(noteTake().grade('--keys', '38', '--json').stdout));
    expect(right.strokes.time.length).toBeLessThan(graded().strokes.time.length);
    expect(right.warnings.map(({ code }) => code)).not.toContain('notes-of-several-keys');
  });

  it('give a report that says what its levels are, with their sound', () => {
    const { folder, grade } = noteTake();
    expect(grade('--report', 'take.html').status).toBe(0);
    const html = readFileSync(join(folder, 'take.html'), 'utf8');
    expect(html).toContain('below the hardest it can tell');
    expect(html).toContain('decibels under velocity 127');
  });

  it('are kept, and graded again, in a library', () => {
    const { folder, grade } = noteTake();
    const library = ['--library', join(folder, 'library')];
    expect(grade('--player', 'Tomas', ...library).stderr).toContain('Kept as');
    expect(runProgram(['takes', 'regrade', 'newest', ...library]).stdout).toContain('1 of 1');
    const { stdout } = runProgram(['takes', 'show', 'newest', '--json', ...library]);
    expect(JSON.parse(stdout).result ?? JSON.parse(stdout)).toMatchObject({
      recording: { levels: 'velocity' },
    });
  });

  it.each([
    ['a key that sent nothing', midi, ['--keys', '99'], 2, /has no note of key 99.*key 38/],
    ['what is no list of keys', midi, ['--keys', '38;40'], 2, /isn't a list of MIDI keys/],
    ['a file cut short', midi.subarray(0, 60), [], 3, /damaged MIDI file \(its end is missing\)/],
  ] as const)('refuse %s in a sentence', (_, bytes, args, status, message) => {
    const ending = noteTake(bytes).grade(...args);
    expect([ending.status, ending.stdout]).toEqual([status, '']);
    expect(ending.stderr).toMatch(message);
  });

  it('are all that keys can be chosen from', () => {
    const ending = runProgram([
      'grade',
      sampleTakePath('demo'),
      '--sheet',
      sampleSheetPath('demo'),
      '--keys',
      '38',
    ]);
    expect([ending.status, ending.stderr]).toEqual([2, expect.stringContaining('this is none')]);
  });
});
