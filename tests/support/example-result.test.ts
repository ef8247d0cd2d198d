import { describe, expect, it } from 'vitest';
import { validateTakeResult } from '../../src/core/result/validate-take-result.ts';
import { exampleResult } from './example-result.ts';

describe('exampleResult', () => {
  it('fits the schema and comes out the same every time', () => {
    expect(() => validateTakeResult(exampleResult())).not.toThrow();
    expect(exampleResult()).toEqual(exampleResult());
  });

  it('has strokes in order of time, each on the slot that names it', () => {
    const { strokes, slots } = exampleResult();
    expect(strokes.time).toHaveLength(72);
    expect(strokes.time.every((t, i) => i === 0 || t > strokes.time[i - 1]!)).toBe(true);
    slots.stroke.forEach((stroke, slot) => {
      if (stroke !== null) expect(strokes.slot[stroke]).toBe(slot);
    });
    expect(strokes.role.filter((role) => role === 'matched')).toHaveLength(71);
  });
});
