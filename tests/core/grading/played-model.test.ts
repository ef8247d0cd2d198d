import { describe, expect, it } from 'vitest';
import { modelFromTake } from '../../../src/core/grading/played-model.ts';
import { exampleResult } from '../../support/example-result.ts';
import { players } from '../measures/simulated-performance.ts';
import { simulatedResult } from './simulated-result.ts';

const player = players['middling corrector']!;

describe('modelFromTake', () => {
  it('gives the example', () => {
    const made = modelFromTake(
      simulatedResult({ sheet: 'tempo: 110\n>RLR >LRL ; times: 6', seed: 1, player }),
    );
    expect(made).toMatchObject({ ok: true, model: { lines: [{ notation: '>RLR >LRL' }] } });
  });

  it('leaves out a line that was played too little', () => {
    const sheet = 'tempo: 110\n>RLR >LRL ; times: 6\nR>LR L>RL ; times: 1';
    const made = modelFromTake(simulatedResult({ sheet, seed: 1, player }));
    expect(made.ok && made.model.lines.map(({ notation }) => notation)).toEqual(['>RLR >LRL']);
  });

  it('gives the reason where a take is none', () => {
    const short = simulatedResult({ sheet: 'tempo: 110\n>RLR >LRL ; times: 2', seed: 1, player });
    expect(modelFromTake(short)).toEqual({ ok: false, reason: { code: 'model-too-short', facts: {} } });
    const ungraded = exampleResult({
      grading: { state: 'not-gradable', reason: { code: 'silent-take', facts: {} } },
    });
    expect(modelFromTake(ungraded)).toEqual({ ok: false, reason: { code: 'model-not-graded', facts: {} } });
  });
});
