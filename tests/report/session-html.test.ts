import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { gradeSession } from '../../src/core/session/grade-session.ts';
import type { SessionResult } from '../../src/core/session/session-result.ts';
import { median } from '../../src/core/stats/median.ts';
import { openRecording } from '../../src/formats/open-recording.ts';
import { sessionHtml } from '../../src/report/session-html.ts';
import { sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { plainSpaces } from '../support/plain-spaces.ts';

const parsed = parseSheet(readFileSync(sampleSheetPath('demo'), 'utf8'));
const recording = await openRecording(sampleTakePath('demo'));
if (!parsed.ok || !recording.ok) throw new Error("the demo can't be read");
const session = gradeSession(recording.source, parsed.sheet, { name: 'demo.wav' });
const reports = session.takes.map((_, i) => `take-0${i + 1}.html`);
const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
const page = (of: SessionResult = session) =>
  plainSpaces(sessionHtml(of, { reports, fontFaces: '', sha256 }));

describe("the page before a session's reports", () => {
  it('leads to every report, and tells each line and take', () => {
    const html = page();
    for (const report of reports) expect(html).toContain(`href="${report}"`);
    for (const { label } of session.sheet.lines) expect(html).toContain(label);
    const scored = session.takes.flatMap(({ result }) => result.scores?.overall.score ?? []);
    expect(scored.length).toBeGreaterThan(0);
    for (const score of scored) expect(html).toContain(`${Math.round(score)} <span>`);
    expect(html).toContain('too few strokes');
    expect(html).toContain('3 of 3 were played');
    expect(html).toContain('default-src &#39;none&#39;');
    expect(html).toContain('script-src &#39;none&#39;');
  });

  it('says at which tempo a take was played where another was asked for', () => {
    const [first, ...others] = session.takes;
    const { sheet, tempo } = first!.result;
    const lines = sheet.lines.map((line) => ({ ...line, bpm: median(tempo.bpm) * 0.8 }));
    const slower = { ...first!, result: { ...first!.result, sheet: { ...sheet, lines } } };
    expect(page()).not.toContain('(asked:');
    const html = page({ ...session, takes: [slower, ...others] });
    expect(html.match(/, at \d+ BPM \(asked: \d+ BPM\)<\/th>/g)).toHaveLength(1);
  });

  it("says what wasn't played, and what fits no line", () => {
    const { summary } = session;
    const nothing = summary.lines.map((line) => ({ ...line, plays: [], repeats: 0, score: null }));
    const html = page({
      ...session,
      takes: [],
      unrecognised: [{ from: 3, to: 65 }],
      summary: { lines: nothing, weakest: null },
    });
    expect(html.match(/Not played\./g)).toHaveLength(3);
    expect(html).toContain('No line of the sheet was found');
    expect(html).toMatch(/left out: 0?0:03 to 1:05/);
  });

  it.each([
    '</script><script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    '\u202Egnp.exe',
    '🥁'.repeat(5000),
  ])('shows a title, a label and a name from outside as text: %.30s', (hostile) => {
    const { sheet: asked, recording } = session;
    const html = page({
      ...session,
      recording: { ...recording, name: hostile },
      sheet: { title: hostile, lines: asked.lines.map((line) => ({ ...line, label: hostile })) },
    });
    expect(html).not.toContain('<script>alert');
    expect(html).not.toContain('<img');
    expect(html).not.toContain('\u202E');
    expect(html.length).toBeLessThan(page().length + 20_000);
  });
});
