import { describe, expect, it } from 'vitest';
import { lineFromText } from '../../../src/core/exercise/line-from-text.ts';

describe('lineFromText', () => {
  it('makes the line of its comment from a notation', () => {
    const parsed = lineFromText(' >RLR  >LRL ', { bpm: 110, repeats: 8 });
    expect(parsed).toMatchObject({
      ok: true,
      line: {
        label: '>RLR >LRL',
        notation: '>RLR >LRL',
        bpm: 110,
        repeats: 8,
        beatsInBar: 4,
        restBeats: 0,
        leadChange: false,
        ratioBand: null,
      },
    });
  });

  it('makes a line from an id of the catalogue', () => {
    const parsed = lineFromText('triplet-2-doubles');
    expect(parsed.ok && parsed.line).toMatchObject({
      id: 'triplet-2-doubles',
      label: 'Triplets, accent 2, doubles',
      notation: 'R>RL L>RR L>LR R>LL',
      bpm: null,
      repeats: 1,
    });
  });

  it('takes the bar from the bar lines', () => {
    const parsed = lineFromText('RLR LRL RLR | LRL RLR LRL');
    expect(parsed.ok && parsed.line.beatsInBar).toBe(3);
    expect(lineFromText('RLR LRL | RLR', { beatsInBar: 1 })).toMatchObject({
      ok: false,
      fault: { code: 'bar-too-long', facts: { beats: 2, value: 1 } },
    });
  });

  it.each([
    ['triplet-9-doubles', 'unknown-exercise', 1],
    ['  triplte-1-doubles', 'unknown-exercise', 3],
    ['warmup', 'unknown-exercise', 1],
    ['rlr', 'grace-without-stroke', 1],
    ['  RXR', 'unknown-sign', 4],
    ['', 'notation-empty', 1],
  ])('tells what is wrong with %j', (text, code, column) => {
    expect(lineFromText(text)).toMatchObject({ ok: false, fault: { code, line: 1, column } });
  });

  it('names the exercise that was probably meant', () => {
    expect(lineFromText('triplte-1-doubles')).toMatchObject({
      fault: { facts: { nearest: 'triplet-1-doubles' } },
    });
  });
});
