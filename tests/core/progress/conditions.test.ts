import { describe, expect, it } from 'vitest';
import { type Conditions, likeness } from '../../../src/core/progress/conditions.ts';

const take: Conditions = {
  exercise: '>RLR >LRL',
  bpm: 100,
  technique: 'wrist',
  pad: 'gum pad',
  sticks: 'hickory',
  device: 'phone',
};

describe('likeness', () => {
  it('is whole between two takes of one set-up, whatever the case of letters', () => {
    expect(likeness(take, { ...take, pad: ' Gum Pad' })).toEqual({
      differ: [],
      unknown: [],
      timing: true,
      levels: true,
    });
  });

  it('allows 3 % of tempo either way', () => {
    expect(likeness(take, { ...take, bpm: 103 }).timing).toBe(true);
    expect(likeness({ ...take, bpm: 103 }, take).timing).toBe(true);
    expect(likeness(take, { ...take, bpm: 104 })).toMatchObject({
      differ: ['bpm'],
      timing: false,
      levels: false,
    });
    expect(likeness(take, { ...take, bpm: null }).timing).toBe(false);
  });

  it('keeps levels apart on another pad, or where nobody noted it', () => {
    const other = likeness(take, { ...take, pad: 'pillow' });
    expect(other).toMatchObject({ differ: ['pad'], timing: true, levels: false });
    expect(likeness(take, { ...take, device: null })).toMatchObject({ unknown: ['device'], levels: false });
  });

  it('keeps techniques apart', () => {
    expect(likeness(take, { ...take, technique: 'whip' }).timing).toBe(false);
  });
});
