import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtLibrary as library } from './built-library.ts';
import { runProgram, sampleSheetPath, sampleTakePath } from './built-program.ts';

describe('what cannot be', () => {
  it.each<[string, string[]]>([
    [
      'goes with --player',
      ['grade', sampleTakePath('demo'), '--sheet', sampleSheetPath('demo'), '--pad', 'gum'],
    ],
    ['is no day', ['takes', '--since', 'yesterday']],
    ['Choose newest, oldest, cleanest', ['takes', '--order', 'best']],
    ['names no take', ['takes', 'show', 'monday']],
    ['No take begins with', ['takes', 'show', 'abcd']],
    ['no takes in this library', ['takes', 'show', 'newest']],
    ['There is no player', ['takes', '--player', 'Nobody']],
    ["--bpm 90.. can't be. Write a tempo, or two", ['takes', '--bpm', '90..']],
    ["--bpm 110..90 doesn't rise", ['takes', '--bpm', '110..90']],
    ['Nothing to compare is named', ['compare']],
    ["1 take can't be compared", ['compare', 'newest']],
    ['add --exercise and --from, too', ['compare', '--player', 'Somebody']],
    ["Takes and days can't be compared at once", ['compare', 'newest', '--player', 'Somebody']],
  ])('is told in a sentence: %s', (sentence, args) => {
    const { run } = library();
    run('players', 'add', 'Somebody');
    const { status, stderr } = args[0] === 'grade' ? runProgram(args) : run(...args);
    expect([status, stderr]).toEqual([2, expect.stringContaining(sentence)]);
  });

  it("is a library that isn't there, and looking for it makes none", () => {
    const { folder, run } = library();
    for (const args of [
      ['takes'],
      ['players'],
      ['progress', '--player', 'Mirelle'],
      ['compare', 'newest', 'newest'],
    ]) {
      const { status, stderr } = run(...args);
      expect([status, stderr]).toEqual([2, expect.stringContaining('there is no such folder')]);
    }
    expect(existsSync(folder)).toBe(false);
  });

  it('is a library that is something else', () => {
    const { status, stderr } = runProgram(['takes', '--library', sampleTakePath('demo')]);
    expect([status, stderr]).toEqual([
      1,
      expect.stringMatching(/is no library.*\(it is a file, not a folder\)/),
    ]);
    expect(existsSync(sampleTakePath('demo'))).toBe(true);
    expect(readFileSync(sampleTakePath('demo')).subarray(0, 4).toString()).toBe('RIFF');
  });
});
