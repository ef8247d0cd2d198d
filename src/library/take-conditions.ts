import type { Conditions } from '../core/progress/conditions.ts';
import type { OpenedTake } from './read-take.ts';

/** A kept take with its conditions: the same sheet is the same exercise. */
export function takeConditions({ take, result }: Pick<OpenedTake, 'take' | 'result'>): {
  readonly result: OpenedTake['result'];
  readonly conditions: Conditions;
} {
  const noted = (text: string) => (text === '' ? null : text);
  const bpm = take.bpmLow !== null && take.bpmLow === take.bpmHigh ? take.bpmLow : take.bpmPlayed;
  return {
    result,
    conditions: {
      exercise: result.sheet.lines.map(({ id }) => id).join(' '),
      bpm,
      technique: noted(take.technique),
      pad: noted(take.pad),
      sticks: noted(take.sticks),
      device: noted(take.device),
    },
  };
}
