import { figure } from '../core/result/figures.ts';
import { modelPlaceName, standingWords } from '../core/result/model-words.ts';
import type { TakeResult } from '../core/result/take-result.ts';
import { hanging, padded, printable, type Styles } from './text-layout.ts';

type Model = NonNullable<TakeResult['model']>;
type Difference = Model['measures'][number];

const titles: readonly (readonly [string, string])[] = [
  ['model-placement', 'Place in the beat, % of a partial; plus: later than the model'],
  ['model-level', 'Level above the middle tap, dB; plus: louder than the model'],
];

/** Rows of a take against its model: each partial's difference, 95 % range and where it stands. */
export function modelTable(model: Model, width: number, styles: Styles): string[] {
  const severalLines = new Set(model.measures.map(({ scope }) => scope.line)).size > 1;
  const row = (one: Difference): string => {
    const { outcome, unit } = one;
    const label = `    ${padded(modelPlaceName(one, severalLines), 25)}`;
    if (outcome.state === 'not-measurable') return `${label}  – ${styles.faint("couldn't be measured")}`;
    if (outcome.state === 'not-applicable') return `${label}  – ${styles.faint("doesn't apply here")}`;
    const range = `${figure(outcome.low, unit)} to ${figure(outcome.high, unit)}`;
    return [
      label,
      styles.figure(padded(figure(outcome.value, unit), 6, 'end')),
      padded(range, 14, 'end'),
      standingWords(one),
    ].join('  ');
  };
  const left = model.linesLeftOut;
  const open = model.measures.some(
    ({ outcome, standing }) => outcome.state === 'measured' && standing === 'not-told',
  );
  return [
    ...hanging('  ', printable(model.name), width).map(styles.faint),
    ...titles.flatMap(([id, title]) => [
      ...hanging('  ', title, width),
      ...model.measures.filter((one) => one.id === id).map(row),
    ]),
    ...(open
      ? hanging('  ', "Where it can't be told yet, more repeats in one take of either would tell.", width)
      : []),
    ...(left > 0
      ? hanging('  ', `${left} ${left === 1 ? 'line is' : 'lines are'} not in the model and left out.`, width)
      : []),
  ];
}
