import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { findRecordings } from '../../../src/cli/folder/find-recordings.ts';
import { temporaryFolder } from '../../formats/temporary-folder.ts';

it('finds recordings by name and number, each once, in folders inside folders', () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'anna'));
  mkdirSync(join(folder, 'reports'));
  for (const name of [
    ...['take 10.wav', 'take 2.WAV', 'take.m4a', 'take.sheet', '.hidden.wav', 'notes.txt'],
    ...['anna/1.wav', 'reports/take-sound.mp3'],
  ])
    writeFileSync(join(folder, name), '');
  symlinkSync(folder, join(folder, 'anna/back'));
  symlinkSync(join(folder, 'anna/1.wav'), join(folder, 'again.wav'));
  const shown = (...named: string[]) =>
    findRecordings(named, join(folder, 'reports')).map((found) => found.shown);
  // The link comes first by name, and what it leads to isn't graded twice.
  expect(shown(folder)).toEqual(['again.wav', 'take 2.WAV', 'take 10.wav', 'take.m4a']);
  expect(shown(join(folder, 'anna'), join(folder, 'take.m4a'))).toEqual(['anna/1.wav', 'take.m4a']);
});
