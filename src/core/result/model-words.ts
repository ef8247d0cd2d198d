import type { TakeResult } from './take-result.ts';

type Difference = NonNullable<TakeResult['model']>['measures'][number];

const standings: Readonly<Record<string, Readonly<Record<Difference['standing'], string>>>> = {
  'model-placement': {
    alike: 'like the model',
    above: 'later than the model',
    below: 'earlier than the model',
    'not-told': "can't be told yet",
  },
  'model-level': {
    alike: 'like the model',
    above: 'louder than the model',
    below: 'softer than the model',
    'not-told': "can't be told yet",
  },
};

/** Where a figure of a take stands against its model, in words; undefined for a measure that no words are known of. */
export const standingWords = ({ id, standing }: Difference): string | undefined => standings[id]?.[standing];

/** Which strokes a difference is of: "partial 2, accent". */
export const modelPlaceName = ({ scope }: Difference, severalLines: boolean): string =>
  `${severalLines ? `line ${scope.line + 1}, ` : ''}partial ${scope.partial}${scope.accent ? ', accent' : ''}`;
