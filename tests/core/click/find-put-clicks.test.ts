import { describe, expect, it } from 'vitest';
import { findPutClicks } from '../../../src/core/click/find-put-clicks.ts';
import { withoutClicks } from '../../../src/core/click/without-clicks.ts';
import { lineFromText } from '../../../src/core/exercise/line-from-text.ts';
import { risingSheet } from '../../../src/core/exercise/rising-sheet.ts';
import { attacksOf } from '../../../src/core/onsets/attack-search.ts';
import { hearStrokes } from '../../../src/core/onsets/hear-strokes.ts';
import { memorySource } from '../../bench/bench-take.ts';
import { clocksApart, places, takeWithClick } from '../../bench/put-click-takes.ts';
import { scoreTake } from '../../bench/score-take.ts';

const parsed = lineFromText('>RLR >LRL', { repeats: 4 });
if (!parsed.ok) throw new Error('no line');
const sheet = risingSheet(parsed.line, { from: 80, to: 160, step: 20 });
const player = { scatter: 0.05, missed: 0, stumbles: 0, fall: { kind: 'none' }, from: 9 } as const;
const asked = { sheet, player, kind: 'rubber-pad', place: places[0]!, seed: 'put clicks' } as const;
const rendered = (clickDb: number, click = {}) => {
  const { take, playedClick, delay } = takeWithClick({ ...asked, clickDb, click });
  const source = memorySource(take.samples, take.sampleRate);
  const { attacks } = attacksOf(source);
  return { take, delay, source, attacks, sounds: playedClick.sounds! };
};

describe('findPutClicks', () => {
  it.each([-30, -10])(
    'finds delay, rate and every sound of a click whose tempo rises (%i dBFS)',
    (clickDb) => {
      const { source, attacks, sounds, delay } = rendered(clickDb, { bell: true, subdivisions: 2 });
      const found = findPutClicks(source, attacks, sounds)!;
      expect(found.whole).toBe(true);
      expect(found.voices.map(({ times }) => times.length).sort()).toEqual(
        sounds.map(({ times }) => times.length).sort(),
      );
      const put = sounds[0]!.times[0]!;
      // An onset is read somewhere in the 0.4 ms over which a click swells.
      expect(Math.abs(found.clock.delay + found.clock.rate * put - put - delay)).toBeLessThan(0.0004);
      expect(Math.abs(found.clock.rate - 1 - clocksApart)).toBeLessThan(2e-6);
    },
  );

  it('finds nothing where the microphone hears none, or another', () => {
    const { source, attacks, sounds } = rendered(-120);
    expect(findPutClicks(source, attacks, sounds)).toBeNull();
    expect(findPutClicks(source, [], sounds)).toBeNull();
    const heard = rendered(-20);
    const others = sounds.map(({ kind, times }) => ({ kind, times: times.map((time) => 1.1 * time) }));
    const found = findPutClicks(heard.source, heard.attacks, others);
    expect(found?.voices.length ?? 0).toBe(0);
  });

  it('leaves a click in that sounds too seldom to be learned, and says so', () => {
    const { source, attacks, sounds } = rendered(-15);
    const [first, ...others] = sounds;
    const rare = { kind: 'rare', times: first!.times.slice(0, 1) };
    const known = [{ ...first!, times: first!.times.slice(1) }, ...others, rare];
    expect(findPutClicks(source, attacks, known)!.whole).toBe(false);
    expect(findPutClicks(source, attacks, sounds)!.whole).toBe(true);
  });

  it('goes by nothing that sounds after the recording has ended', () => {
    const { source, attacks, sounds } = rendered(-15);
    const later = sounds.map(({ kind, times }) => ({ kind, times: [...times, 100, 101, 102] }));
    const found = findPutClicks(source, attacks, later)!;
    expect(found.voices.flatMap(({ times }) => times).every((time) => time < 90)).toBe(true);
    const clean = withoutClicks(source, found).read(0, 0, source.length);
    const asKnown = withoutClicks(source, findPutClicks(source, attacks, sounds)!).read(0, 0, source.length);
    expect(clean).toEqual(asKnown);
  });
});

describe('strokes beside a click whose tempo rises', () => {
  it.each([-30, -10])('are found as if it were not there (%i dBFS)', (clickDb) => {
    const { take, source, sounds } = rendered(clickDb, { bell: true });
    const pads = hearStrokes(source, undefined, sounds).sounds.filter(({ sound }) => sound === 'pad');
    const { within3Ms, strokes, surplus, errors } = scoreTake(take, pads);
    expect(within3Ms).toBe(strokes);
    expect(surplus).toEqual([]);
    for (const { time, level } of errors) {
      expect(Math.abs(time)).toBeLessThan(0.0005);
      expect(Math.abs(level!)).toBeLessThan(1.5);
    }
  });
});
