import { describe, expect, it } from 'vitest';
import { NewerTakeResult, upgradeTakeResult } from '../../../src/core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../../../src/core/result/validate-take-result.ts';
import { exampleResult } from '../../support/example-result.ts';

describe('upgradeTakeResult', () => {
  const result = exampleResult();

  it('gives back a result of this version as it is', () => {
    expect(upgradeTakeResult(JSON.parse(JSON.stringify(result)))).toEqual(result);
  });

  it('takes an old one through every step from its version on', () => {
    const seen: number[] = [];
    const step = (to: number) => (old: Readonly<Record<string, unknown>>) => {
      seen.push(to);
      return { ...old, version: to === 3 ? 1 : to, warnings: [] };
    };
    // Made-up steps: the last one ends in the shape that this program validates.
    const steps = [step(2), step(3)];
    const { warnings: _, ...older } = result;
    expect(upgradeTakeResult({ ...older, version: 1 }, steps)).toEqual(result);
    expect(seen).toEqual([2, 3]);
    seen.length = 0;
    expect(upgradeTakeResult({ ...older, version: 2 }, steps)).toEqual(result);
    expect(seen).toEqual([3]);
  });

  it('leaves a newer one alone, and refuses what is none', () => {
    expect(() => upgradeTakeResult({ ...result, version: 2 })).toThrow(NewerTakeResult);
    for (const value of [null, 7, 'text', {}, { ...result, version: 0 }, { ...result, version: 1.5 }]) {
      expect(() => upgradeTakeResult(value)).toThrow(InvalidTakeResult);
    }
    expect(() => upgradeTakeResult({ ...result, schema: 'another', version: 9 })).toThrow(InvalidTakeResult);
  });
});
