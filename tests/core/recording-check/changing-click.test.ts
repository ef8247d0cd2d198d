import { describe, expect, it } from 'vitest';
import { plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { lineFromText } from '../../../src/core/exercise/line-from-text.ts';
import { risingSheet } from '../../../src/core/exercise/rising-sheet.ts';
import { gradeTake } from '../../../src/core/grade-take.ts';
import { growingSource } from '../../../src/core/signal/growing-source.ts';
import { playedClickOf } from '../../../src/page/recording/played-click-of.ts';
import { type RisingPlayer, recordRising } from '../../bench/breakdown-takes.ts';

const line = lineFromText('>RLR >LRL', { repeats: 4 });
if (!line.ok) throw new Error('no line');
const player: RisingPlayer = { scatter: 0.05, missed: 0, stumbles: 0, fall: { kind: 'none' }, from: 9 };

/** What is found of a take whose click lies so loud in the microphone, dBFS. */
function graded(clickDb: number | null, told = false) {
  const rise = { from: 120, to: 150, step: 10 };
  const sheet = risingSheet(line.ok ? line.line : (undefined as never), rise);
  const surroundings = { kind: 'rubber-pad', contrastDb: 12, room: null, noiseDb: -65, clickDb } as const;
  const { samples, sampleRate, trackAt } = recordRising(sheet, player, { ...surroundings, delay: 0.08 }, 'a');
  const recording = growingSource(sampleRate);
  recording.add(0, samples);
  const plan = planClicks(sheet, plainClick);
  const { sounds = [], ...times } = playedClickOf(plan, trackAt, null, [], { sampleRate });
  const playedClick = told ? { ...times, sounds } : times;
  const { recording: known, measures } = gradeTake(recording.source(), sheet, { playedClick });
  const stateOf = (id: string) => measures.find((one) => one.id === id)!.outcome;
  return { codes: known.check!.map(({ code }) => code), stateOf };
}

describe('changingClick', () => {
  it('is found where the microphone hears a click whose tempo changes, and nothing is counted then', () => {
    const { codes, stateOf } = graded(-15);
    expect(codes).toContain('click-changes');
    expect(codes).not.toContain('stick-clicks');
    for (const id of ['missed-and-extra', 'accent-spread'])
      expect(stateOf(id)).toMatchObject({
        state: 'not-measurable',
        reason: { code: 'spoiled-click-changes' },
      });
    expect(stateOf('timing-spread').state).toBe('measured');
  });

  it('is not found where it is known when each of its clicks was put out: they are taken off then', () => {
    const { codes, stateOf } = graded(-15, true);
    expect(codes).not.toContain('click-changes');
    for (const id of ['missed-and-extra', 'accent-spread', 'timing-spread'])
      expect(stateOf(id).state).toBe('measured');
    expect(stateOf('missed-and-extra')).toMatchObject({ value: 0 });
  });

  it('leaves levels alone that a soft click does not change', () => {
    const { codes, stateOf } = graded(-40);
    expect(codes).toContain('click-changes');
    expect(stateOf('missed-and-extra').state).toBe('not-measurable');
    expect(stateOf('accent-spread').state).toBe('measured');
  });

  it('is not found in headphones', () => {
    const { codes, stateOf } = graded(null);
    expect(codes).not.toContain('click-changes');
    expect(stateOf('missed-and-extra').state).toBe('measured');
  });
});
