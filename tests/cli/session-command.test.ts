import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { validateSessionResult } from '../../src/core/session/validate-session-result.ts';
import { temporaryFolder } from '../formats/temporary-folder.ts';
import { runProgram, sampleTakePath } from './built-program.ts';

const recording = sampleTakePath('demo');
const sheet = recording.replace(/wav$/, 'sheet');

describe('session', () => {
  it('finds the three lines of the demo take, shows them and writes a report for each', () => {
    const folder = temporaryFolder();
    const json = join(folder, 'session.json');
    const reports = join(folder, 'reports');
    const { status, stdout } = runProgram([
      'session',
      recording,
      '--sheet',
      sheet,
      '--json',
      json,
      '--report-folder',
      reports,
    ]);
    expect(status).toBe(0);
    const result = validateSessionResult(JSON.parse(readFileSync(json, 'utf8')));
    expect(result.takes.map(({ line, repeats }) => [line, repeats])).toEqual([
      [0, 4],
      [1, 4],
      [2, 4],
    ]);
    for (const { label } of result.sheet.lines) expect(stdout).toContain(label);
    expect(readdirSync(reports).sort()).toEqual([
      'index.html',
      'take-01-line-1.html',
      'take-02-line-2.html',
      'take-03-line-3.html',
    ]);
    // Each report has the sound of its own take: MP3 at 96 kbit/s, 12,000 bytes a second.
    result.takes.forEach(({ from, to }, i) => {
      const html = readFileSync(join(reports, `take-0${i + 1}-line-${i + 1}.html`), 'utf8');
      const sound = /<audio [^>]*src="data:audio\/mpeg;base64,([^"]+)"/.exec(html)![1]!;
      const seconds = Buffer.from(sound, 'base64').length / 12_000;
      expect(Math.abs(seconds - (to - from))).toBeLessThan(0.15);
    });
  }, 60_000);

  it('ends with 4 where no line was played, and with 2 without a sheet', () => {
    const other = join(temporaryFolder(), 'other.sheet');
    writeFileSync(other, 'tempo: 60\nR--- ---- ---- L--- ---- -->R- | ---- R--- ; times: 30\n');
    expect(runProgram(['session', recording, '--sheet', other]).status).toBe(4);
    const { status, stderr } = runProgram(['session', recording]);
    expect(status).toBe(2);
    expect(stderr).toContain('--sheet');
  }, 60_000);
});
