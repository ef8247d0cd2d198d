import { describe, expect, it } from 'vitest';
import { sessionSummary } from '../../src/cli/session-summary.ts';
import type { SessionResult } from '../../src/core/session/session-result.ts';
import { median } from '../../src/core/stats/median.ts';
import { exampleResult } from '../support/example-result.ts';

const take = exampleResult();
const [line] = take.sheet.lines;
const score = take.scores!.overall.score;
const repeats = [0, 1].map((repeat) => ({
  ...{ repeat, played: 12, missed: 0, extra: 0, unevenShare: 4 },
  score: 90 - 60 * repeat,
}));
const session: SessionResult = {
  schema: 'evenhand-session-result',
  version: 1,
  recording: { name: 'practice\u001b[2J.wav', sha256: null, duration: 120 },
  sheet: {
    title: 'Week 7',
    lines: [
      { ...line!, label: 'First', repeats: 2 },
      { ...line!, label: 'Second', repeats: 4 },
    ],
  },
  takes: [{ line: 0, repeats: 2, from: 65, to: 80, result: take }],
  unrecognised: [{ from: 90, to: 95 }],
  summary: {
    lines: [
      { line: 0, repeats: 2, asked: 2, plays: [{ take: 0, repeats, score, brokeFrom: 1 }], score },
      { line: 1, repeats: 0, asked: 4, plays: [], score: null },
    ],
    weakest: null,
  },
};

describe('sessionSummary', () => {
  const text = sessionSummary(session, { color: false, width: 60 });
  it('says of each line how often it was played, its score and where it broke', () => {
    const flat = text.replace(/\s+/g, ' ');
    expect(flat).toContain(`First: played twice (asked: twice), score ${score.toFixed(0)} (`);
    expect(flat).toContain('It broke from time 2 on, in the take at 1:05.0.');
    expect(flat).toContain('Second: not played.');
    expect(flat).toContain('Playing that fits no line of the sheet 1:30.0 to 1:35.0.');
  });
  it('says at which tempo a take was played where another was asked for', () => {
    const [asked] = take.sheet.lines;
    const of = (bpm: number) => {
      const slower = { ...take, sheet: { ...take.sheet, lines: [{ ...asked!, bpm }] } };
      const takes = [{ ...session.takes[0]!, result: slower }];
      return sessionSummary({ ...session, takes }, { color: false, width: 200 });
    };
    const played = Math.round(median(take.tempo.bpm));
    expect(of(80)).toContain(`First, twice, at ${played} BPM (asked: 80 BPM), score`);
    expect(of(played)).toContain('First, twice, score');
  });
  it('keeps within its width and strips control characters', () => {
    for (const row of text.split('\n')) expect(row.length).toBeLessThanOrEqual(60);
    expect(text).not.toContain('\u001b');
  });
  it('says so where nothing was found', () => {
    const nothing = { ...session, takes: [], unrecognised: [] };
    const lines = session.summary.lines.map((one) => ({ ...one, plays: [] }));
    const empty = sessionSummary(
      { ...nothing, summary: { lines, weakest: null } },
      { color: false, width: 80 },
    );
    expect(empty).toContain('No line of the sheet was found in this recording.');
  });
});
