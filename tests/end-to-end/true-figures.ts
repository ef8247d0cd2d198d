import type { TakeTruth } from '../../fixtures/generator/take-truth.ts';
import type { Scope } from '../../src/core/result/take-result.ts';

/** A habit or a tempo of the player as the measure of it should say. */
export interface TrueFigure {
  readonly id: string;
  readonly scope: Scope;
  readonly value: number;
}

/**
 * What the player of a take in triplets with one accent a beat does to the beat, by the definitions of the measures: a
 * partial's place is told against the mean of the partials, a bend round the accent against all other strokes.
 */
export function trueFigures({ player }: TakeTruth): TrueFigure[] {
  const places = [0, 1, 2].map((i) => player.placementMs[i] ?? 0);
  const mean = places.reduce((sum, place) => sum + place, 0) / places.length;
  const { before, on, after } = player.bendMs;
  const figure = (id: string, value: number, scope: Scope = {}): TrueFigure => ({ id, scope, value });
  return [
    figure('tempo-error', player.tempoErrorPercent),
    figure('tempo-change', player.tempoChangePercent),
    figure('hand-offset', player.handMs),
    ...places.map((place, i) => figure('placement', place - mean, { partial: i + 1 })),
    figure('accent-bend', before - (on + after) / 2, { place: 'before' }),
    figure('accent-bend', on - (before + after) / 2, { place: 'on' }),
    figure('accent-bend', after - (before + on) / 2, { place: 'after' }),
    ...(player.timekeeping.kind === 'independent'
      ? [figure('timing-spread', player.timekeeping.jitterMs)]
      : []),
  ];
}
