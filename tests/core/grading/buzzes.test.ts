import { describe, expect, it } from 'vitest';
import { renderTake } from '../../../fixtures/generator/render-take.ts';
import { scenario } from '../../../fixtures/generator/scenarios.ts';
import { alignTake } from '../../../src/core/alignment/align-take.ts';
import { layOut } from '../../../src/core/exercise/lay-out.ts';
import { buzzesAsOne } from '../../../src/core/grading/buzzes.ts';
import { findMeasure } from '../../../src/core/scoring/find-measure.ts';
import { gradeSamples } from '../recording-check/grade-samples.ts';

describe('buzzesAsOne', () => {
  it.each([7, 161, 162])(
    'grades buzzes by the strokes that begin them, their bounces no extra ones, seed %i',
    (seed) => {
      const { sheet, spec } = scenario('buzz', seed);
      const { samples, sampleRate, truth } = renderTake(spec);
      const result = gradeSamples(samples, sampleRate, sheet);
      expect(result.grading.state).toBe('graded');
      const { role, slot, time } = result.strokes;
      const right = role.filter((one, i) => {
        const played = truth.strokes.find((stroke) => stroke.slot === slot[i]);
        return one === 'matched' && Math.abs(played!.time - time[i]!) < 0.003;
      });
      expect(right).toHaveLength(36);
      for (const id of ['missed', 'extra', 'doubled']) {
        const { outcome } = findMeasure(result.measures, id, {})!;
        if (outcome.state !== 'measured') throw new Error(`${id} ${outcome.state}`);
        expect(outcome.value, id).toBe(0);
      }
    },
  );

  it('leaves a take without buzzes as it was laid', () => {
    const { sheet } = scenario('clean-120', 7);
    const question = { slots: layOut(sheet), sheet, strokes: [], click: null };
    const laid = alignTake(question);
    expect(buzzesAsOne(question, laid).laid).toBe(laid);
  });
});
