import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CommandFault } from '../../src/cli/command-fault.ts';
import { sheetCommand } from '../../src/cli/sheet-command.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runCommand } from './run-command.ts';

const run = (...args: string[]) => runCommand(sheetCommand, args);

function file(name: string, text: string): string {
  const path = join(temporaryFolder(), name);
  writeFileSync(path, text);
  return path;
}

describe('evenhand sheet', () => {
  it('prints a sheet as it was understood', async () => {
    const { stdout } = await run(file('a.sheet', '>RLR >LRL; x4\n'));
    expect(stdout).toBe('times: 4\n\n>RLR >LRL\n');
  });

  it('writes a score that it reads as the same sheet, hands told where none are written', async () => {
    const sheet = file('a.sheet', 'title: Mine\n>RLR >LRL ; times: 4 ; tempo: 90\n');
    const score = join(temporaryFolder(), 'a.musicxml');
    await run(sheet, '--musicxml', score);
    expect((await run(score)).stdout).toContain('>RLR >LRL');
    const bare = readFileSync(score, 'utf8').replaceAll(/<technical>.*?<\/technical>/g, '');
    const { stdout, stderr } = await run(file('bare.musicxml', bare));
    expect(stdout).toContain('>RLR >LRL');
    expect(stderr).toContain('No hand is written at 6 strokes');
  });

  it('refuses to write over the sheet, and tells what is wrong with a file by its name', async () => {
    const sheet = file('a.sheet', '>RLR');
    await expect(run(sheet, '--musicxml', sheet)).rejects.toThrow(CommandFault);
    await expect(run(file('b.xml', '<x/>'))).rejects.toThrow(/b\.xml: This is XML but no MusicXML/);
    expect(readFileSync(sheet, 'utf8')).toBe('>RLR');
  });
});
