import { describe, expect, it } from 'vitest';
import { InvalidRubric, readRubric } from '../../../src/core/scoring/read-rubric.ts';
import { steady } from '../../../src/core/scoring/rubrics/steady.ts';

const criterion = (rubric: ReturnType<typeof readRubric>, measure: string) =>
  rubric.dimensions.flatMap((d) => d.criteria).find((c) => c.measure === measure);

function fault(value: unknown): InvalidRubric {
  try {
    readRubric(value);
  } catch (error) {
    if (error instanceof InvalidRubric) return error;
    throw error;
  }
  throw new Error('the rubric was accepted');
}

describe('readRubric', () => {
  it('changes what the file names and nothing else', () => {
    const rubric = readRubric({
      basedOn: 'steady',
      id: 'tuesday-class',
      title: 'Tuesday class',
      measures: { 'timing-spread-share': { secure: 4, nearly: 8 }, 'tempo-error': { weight: 0 } },
      dimensions: { hands: { weight: 0 }, dynamics: { weight: 2 } },
    });
    expect(rubric).toMatchObject({ id: 'tuesday-class', title: 'Tuesday class' });
    expect(criterion(rubric, 'timing-spread-share')).toMatchObject({
      secure: 4,
      nearly: 8,
      perfect: 0,
      source: 'the rubric file',
    });
    expect(criterion(rubric, 'tempo-error')).toBeUndefined();
    expect(rubric.dimensions.map((d) => d.id)).not.toContain('hands');
    expect(rubric.dimensions.find((d) => d.id === 'dynamics')?.weight).toBe(2);
    expect(criterion(rubric, 'tap-spread')).toEqual(criterion(steady, 'tap-spread'));
  });

  it.each([
    [{}, '/basedOn', 'missing', 'first-years, steady, advanced'],
    [
      { basedOn: 'steady', dimensions: { timing: {} } },
      '/dimensions/timing/weight',
      'missing',
      'a number from 0 up',
    ],
    [{ basedOn: 'strict' }, '/basedOn', '"strict"', 'first-years, steady, advanced'],
    [{ basedOn: 3 }, '/basedOn', '3', 'string'],
    [[], '', '[]', 'object'],
    [
      { basedOn: 'steady', colour: 1 },
      '/colour',
      'not a known entry',
      'basedOn, id, title, dimensions, measures',
    ],
    [
      { basedOn: 'steady', measures: { swing: { secure: 1 } } },
      '/measures/swing',
      'no scored measure',
      expect.stringContaining('tap-spread'),
    ],
    [
      { basedOn: 'steady', dimensions: { groove: { weight: 1 } } },
      '/dimensions/groove',
      'no dimension',
      expect.stringContaining('dynamics'),
    ],
    [
      { basedOn: 'steady', measures: { 'tap-spread': { secure: -1 } } },
      '/measures/tap-spread/secure',
      '-1',
      '> 0',
    ],
    [
      { basedOn: 'steady', measures: { 'tap-spread': { points: 1 } } },
      '/measures/tap-spread/points',
      'not a known entry',
      'weight, perfect, secure, nearly, source',
    ],
    [
      { basedOn: 'steady', measures: { 'tap-spread': { perfect: { min: 1 } } } },
      '/measures/tap-spread/perfect',
      '{"min":1}',
      expect.stringContaining('band'),
    ],
    [
      { basedOn: 'steady', measures: { 'tap-spread': { secure: 4 } } },
      '/measures/tap-spread',
      'secure 4, nearly 3',
      'secure smaller than nearly',
    ],
    [
      { basedOn: 'steady', measures: { 'accent-to-tap-ratio': { perfect: { min: 9, max: 9 } } } },
      '/measures/accent-to-tap-ratio/perfect',
      '{"min":9,"max":9}',
      'a band whose min lies below its max',
    ],
  ])('says where %j is wrong, what stands there and what may', (value, path, found, allowed) => {
    const error = fault(value);
    expect({ path: error.path, found: error.found, allowed: error.allowed }).toEqual({
      path,
      found,
      allowed,
    });
    expect(error.message).toContain(error.found);
  });

  it('refuses a rubric with nothing left in it', () => {
    const dimensions = Object.fromEntries(steady.dimensions.map((d) => [d.id, { weight: 0 }]));
    expect(fault({ basedOn: 'steady', dimensions }).allowed).toBe('at least one weight above 0');
  });
});
