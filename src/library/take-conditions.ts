import type { Conditions } from '../core/progress/conditions.ts';
import { tempoTold } from '../core/progress/tempo-told.ts';
import type { TakeDetails } from './new-take.ts';
import type { OpenedTake } from './read-take.ts';

/** A kept take with its conditions: the same sheet is the same exercise. */
export function takeConditions({ take, result }: Pick<OpenedTake, 'take' | 'result'>): {
  readonly result: OpenedTake['result'];
  readonly conditions: Conditions;
} {
  const asked = take.bpmLow === take.bpmHigh ? take.bpmLow : null;
  return {
    result,
    conditions: {
      exercise: result.sheet.lines.map(({ id }) => id).join(' '),
      bpm: tempoTold(asked, take.bpmPlayed),
      ...notedOf(take),
    },
  };
}

/** What was written down about a take; null where it wasn't. */
export function notedOf({
  technique,
  pad,
  sticks,
  device,
}: TakeDetails): Omit<Conditions, 'exercise' | 'bpm'> {
  const noted = (text: string) => (text === '' ? null : text);
  return { technique: noted(technique), pad: noted(pad), sticks: noted(sticks), device: noted(device) };
}
