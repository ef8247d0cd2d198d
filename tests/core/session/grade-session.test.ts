import { beforeAll, describe, expect, it } from 'vitest';
import { practisedPlayer } from '../../../fixtures/generator/player.ts';
import { gradeSession } from '../../../src/core/session/grade-session.ts';
import type { SessionResult } from '../../../src/core/session/session-result.ts';
import {
  InvalidSessionResult,
  validateSessionResult,
} from '../../../src/core/session/validate-session-result.ts';
import { floatSource } from '../../support/float-source.ts';
import { type RenderedSession, renderSession, type SessionPart } from './rendered-session.ts';

const lines = [
  '>RLR >LRL >RLR >LRL',
  'R>LR L>RL R>LR L>RL',
  'RL>R LR>L RL>R LR>L',
  '>R>LR >L>RL >R>LR >L>RL',
];
const bpm = 110;
const talk = [{ kind: 'talk', seconds: 4, levelDb: -22 }] as const;
/** Plays line 3 three times over in its turn, goes back to line 1, leaves line 4 out, falls apart late in line 2. */
const parts: readonly SessionPart[] = [
  { line: 0, times: 6, pause: 7, change: { before: [...talk] } },
  { line: 2, times: 3, pause: 1.8 },
  { line: 2, times: 3, pause: 1.8 },
  { line: 2, times: 3, pause: 8 },
  { pause: 6, change: { before: [...talk, { kind: 'noodle', seconds: 3, levelDb: -16 }] } },
  { line: 0, times: 6, pause: 9 },
  {
    line: 1,
    times: 8,
    pause: 4,
    change: {
      player: { ...practisedPlayer, timekeeping: { kind: 'independent', jitterMs: 9 }, spreadGrowth: 5 },
    },
  },
];

describe('a session of two minutes with talk, a line left out and one played three times', () => {
  let session: RenderedSession;
  let result: SessionResult;
  beforeAll(() => {
    session = renderSession(lines, bpm, parts);
    const source = floatSource(session.sampleRate, session.samples);
    result = gradeSession(source, session.sheet, { name: 'session.wav' });
  }, 60_000);

  it('falls into the takes that were played, each with its line and repeats', () => {
    expect(result.takes.map(({ line, repeats }) => [line, repeats])).toEqual(
      parts.flatMap(({ line, times }) => (line === undefined ? [] : [[line, times]])),
    );
  });

  it('cuts each take round its strokes, on its own times', () => {
    const truth = session.parts.filter((part) => part !== null);
    expect(result.takes).toHaveLength(truth.length);
    result.takes.forEach(({ from, to, result: take }, i) => {
      const { strokes, slots, recording } = take;
      const first = strokes.time[slots.stroke.find((stroke) => stroke !== null)!]!;
      expect(from + first).toBeCloseTo(truth[i]!.from, 2);
      expect(to).toBeGreaterThan(truth[i]!.to);
      expect(recording.duration).toBeCloseTo(to - from, 3);
      expect(take.grading.state).toBe('graded');
      // The line that falls apart may lose a stroke or two; the others lose none.
      const lost = slots.state.filter((state) => state !== 'played').length;
      expect(lost).toBeLessThanOrEqual(result.takes[i]!.line === 1 ? 3 : 0);
    });
  });

  it('counts how often each line was played, and which was left out', () => {
    expect(result.summary.lines.map(({ plays, repeats }) => [plays.length, repeats])).toEqual([
      [2, 12],
      [1, 8],
      [3, 9],
      [0, 0],
    ]);
  });

  it('says which line broke, and from which repeat on', () => {
    expect(result.summary.weakest).toBe(1);
    const [play] = result.summary.lines[1]!.plays;
    expect(play!.brokeFrom).toBeGreaterThanOrEqual(1);
    expect(play!.brokeFrom).toBeLessThanOrEqual(6);
    expect(play!.repeats).toHaveLength(8);
    for (const line of [0, 2])
      for (const one of result.summary.lines[line]!.plays) expect(one.brokeFrom).toBeNull();
  });

  it('is a document of its own that is checked on reading', () => {
    const document = JSON.parse(JSON.stringify(result));
    expect(validateSessionResult(document)).toEqual(result);
    document.takes[0].result.version = 0;
    expect(() => validateSessionResult(document)).toThrow(InvalidSessionResult);
  });
});

describe('a recording without playing', () => {
  it('has no takes', () => {
    const { samples, sampleRate, sheet } = renderSession(lines, bpm, [
      { pause: 3, change: { before: [...talk] } },
    ]);
    const { takes, summary } = gradeSession(floatSource(sampleRate, samples), sheet);
    expect(takes).toEqual([]);
    expect(summary.weakest).toBeNull();
  });
});
