import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import type { Alignment } from '../../../src/core/alignment/alignment.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { judge, slotF } from './judge-alignment.ts';
import { line, padStrokes, sheetOf } from './made-sheet.ts';
import { sheets } from './played-sheets.ts';
import { realities } from './realities.ts';
import { simulateTake } from './simulated-take.ts';

const gradedMatches = ({ matches, segments }: Alignment) =>
  matches.filter(({ segment }) => segments[segment]!.state === 'graded');

describe('what no two levels and no click can tell', () => {
  const sheet = sheetOf(line('RLR LRL RLR LRL', { repeats: 4 }));

  it('is aligned from the first stroke, with a doubt', () => {
    const take = simulateTake({ sheet, seed: 3 });
    const alignment = alignTake(take);
    expect(alignment.doubt?.code).toBe('phase-not-told');
    expect(alignment.matches.map(({ slot, stroke }) => slot - stroke)).toEqual(take.strokes.map(() => 0));
  });

  it('is no doubt where a click is heard', () => {
    const alignment = alignTake(simulateTake({ sheet, seed: 3, click: true }));
    expect(alignment.reference).toBe('heard-click');
    expect(alignment.doubt).toBeNull();
  });

  it('is no doubt where the rhythm tells', () => {
    const rests = sheetOf(line('RL- R-L RLR L--', { repeats: 4 }));
    const take = simulateTake({ sheet: rests, seed: 4, before: 'talk' });
    const alignment = alignTake(take);
    expect(alignment.doubt).toBeNull();
    expect(slotF(judge(take, alignment))).toBe(1);
  });
});

describe('the reference', () => {
  const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 2 }));
  it('is the asked tempo, and the fitted one where none is asked', () => {
    expect(alignTake(simulateTake({ sheet, seed: 1 })).reference).toBe('asked-tempo');
    const open = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 2, bpm: null }));
    expect(alignTake(simulateTake({ sheet: open, seed: 1 })).reference).toBe('fitted-tempo');
  });

  it('is no click that keeps another tempo', () => {
    const take = simulateTake({ sheet, seed: 1, click: true, tempo: 0.9 });
    const click = {
      ...take.click!,
      times: take.click!.times.map((time) => time * 0.8),
      period: take.click!.period * 0.8,
    };
    expect(alignTake({ ...take, click }).reference).toBe('asked-tempo');
  });
});

describe('how a segment came about', () => {
  const onOneLine = (name: string) => {
    const take = simulateTake({ ...realities[name]!(102), sheet: sheets['one line']! });
    return alignTake(take).segments.map((segment) => segment.began);
  };
  it('is said', () => {
    expect(onOneLine('clean')).toEqual(['start']);
    expect(onOneLine('restart from the beginning')).toEqual(['start', 'restart']);
    expect(onOneLine('partial dropped')).toEqual(['start', 'slip']);
    expect(onOneLine('hesitation in a line')).toEqual(['start', 'pause']);
  });
  it('is a repeat in time where one is played too many', () => {
    const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 2 }));
    const parts = () =>
      [
        { from: 0, to: 23, after: 0, state: 'graded' },
        { from: 12, to: 23, after: 'in-time', state: 'surplus' },
      ] as const;
    const { segments } = alignTake(simulateTake({ sheet, seed: 9, parts }));
    expect(segments.map((segment) => [segment.began, segment.state])).toEqual([
      ['start', 'graded'],
      ['repeat', 'surplus'],
    ]);
  });
});

describe('strokes beside the slots', () => {
  const sheet = sheetOf(line('>RLR >LRL >RLR >LRL', { repeats: 4, bpm: 100 }));
  const clean = simulateTake({ sheet, seed: 8, jitter: 0.02 });
  const added = (offset: number, levelDb = -32) => {
    const at = clean.strokes[20]!.time + offset;
    const strokes = [...clean.strokes, ...padStrokes([at], [levelDb])].sort((a, b) => a.time - b.time);
    return alignTake({ ...clean, strokes });
  };

  it('close behind one are its doubles', () => {
    const { doubled, extra, outside } = added(0.035);
    expect({ doubled, extra, outside }).toEqual({ doubled: [21], extra: [], outside: [] });
  });

  it('between two slots are extra', () => {
    const { doubled, extra, outside } = added(0.1);
    expect({ doubled, extra, outside }).toEqual({ doubled: [], extra: [21], outside: [] });
  });

  it('before the take are outside', () => {
    const strokes = [...padStrokes([0.01], [-20]), ...clean.strokes.map((s) => ({ ...s, time: s.time + 4 }))];
    const { doubled, extra, outside } = alignTake({ ...clean, strokes });
    expect({ doubled, extra, outside }).toEqual({ doubled: [], extra: [], outside: [0] });
  });

  it('of other sounds are in no list', () => {
    const strokes = clean.strokes.map((stroke, i) =>
      i === 20 ? { ...stroke, sound: 'voice' as const } : stroke,
    );
    const { missed, matches, extra, doubled, outside } = alignTake({ ...clean, strokes });
    expect(missed).toEqual([20]);
    expect([...matches.map(({ stroke }) => stroke), ...extra, ...doubled, ...outside]).not.toContain(20);
  });
});

describe('grace notes', () => {
  const sheet = sheetOf(line('>lRLR >rLRL >llRLR >rrLRL', { repeats: 3, bpm: 80 }));
  it('are matched before their main stroke, or missed', () => {
    const take = simulateTake({ sheet, seed: 5, jitter: 0.03 });
    const whole = alignTake(take);
    expect(slotF(judge(take, whole))).toBe(1);
    const grace = take.roles.indexOf('grace', 30);
    const strokes = take.strokes.filter((_, i) => i !== grace);
    expect(alignTake({ ...take, strokes }).missed).toHaveLength(1);
  });
});

describe('takes with nothing to lay', () => {
  const sheet = sheetOf(line('>RLR >LRL'));
  const slots = layOut(sheet);
  it('come back with a doubt', () => {
    for (const strokes of [[], padStrokes([1], [-20])]) {
      const alignment = alignTake({ slots, sheet, strokes, click: null });
      expect(alignment.doubt?.code).toBe('nothing-fits');
      expect(alignment.outside).toHaveLength(strokes.length);
    }
    expect(
      alignTake({ slots: [], sheet: sheetOf(), strokes: padStrokes([1, 2], [0, 0]), click: null }).segments,
    ).toEqual([]);
  });
});

describe('any strokes at all', () => {
  const sheet = sheetOf(
    line('>lRLR >LRL', { repeats: 2, restBeats: 2 }),
    line('R-LL >RzL', { repeats: 2, bpm: null, leadChange: true }),
  );
  const slots = layOut(sheet);
  const gaps = fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { maxLength: 60 });
  const levels = fc.infiniteStream(fc.double({ min: -90, max: 0, noNaN: true }));

  it('keep the rules: one list a stroke, one graded stroke a slot, order kept, slots inside their segment', () => {
    fc.assert(
      fc.property(gaps, levels, (steps, stream) => {
        let time = 0;
        const times = steps.map((step) => (time += step));
        const strokes = padStrokes(
          times,
          times.map(() => stream.next().value!),
        );
        const alignment = alignTake({ slots, sheet, strokes, click: null });
        const { matches, extra, doubled, outside, segments, missed } = alignment;
        const listed = [...matches.map(({ stroke }) => stroke), ...extra, ...doubled, ...outside];
        expect(listed.sort((a, b) => a - b)).toEqual(strokes.map((_, i) => i));
        const graded = gradedMatches(alignment).map(({ slot }) => slot);
        expect(new Set(graded).size).toBe(graded.length);
        expect(missed.filter((slot) => graded.includes(slot))).toEqual([]);
        segments.forEach((segment, index) => {
          const inside = matches.filter((match) => match.segment === index).map(({ slot }) => slot);
          expect(inside).toEqual([...inside].sort((a, b) => a - b));
          for (const slot of inside) {
            expect(slot).toBeGreaterThanOrEqual(segment.firstSlot);
            expect(slot).toBeLessThanOrEqual(segment.lastSlot);
          }
          expect(Number.isFinite(segment.origin) && segment.period > 0).toBe(true);
        });
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});
