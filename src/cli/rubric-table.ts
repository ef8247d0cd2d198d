import { measures } from '../core/measures/index.ts';
import { rounded, shownUnit } from '../core/result/figures.ts';
import { dimensionName, measureName } from '../core/result/names.ts';
import type { Criterion, Rubric } from '../core/scoring/rubric.ts';
import { hanging, padded, printable } from './text-layout.ts';

const columns = { name: 26, perfect: 13, point: 9, weight: 6 } as const;
const gap = '  ';

/** Unit of a scored measure; the gap between the hands' ratios is worked out from two results and is in no list. */
const unitOf = (id: string) => measures.find((measure) => measure.id === id)?.unit ?? 'dB';

/** A distance or place in the measure's unit; a probability in per cent, as everywhere. */
function amount(value: number, id: string): string {
  const unit = unitOf(id);
  return `${rounded(unit === 'probability' ? value * 100 : value)} ${shownUnit(unit)}`;
}

function perfectOf({ perfect, measure }: Criterion): string {
  if (typeof perfect === 'number') return amount(perfect, measure);
  return `${rounded(perfect.min, 0)} to ${amount(perfect.max, measure).replace('.0 ', ' ')}`;
}

const cells = (name: string, perfect: string, secure: string, nearly: string, weight: string) =>
  [
    padded(name, columns.name),
    padded(perfect, columns.perfect, 'end'),
    padded(secure, columns.point, 'end'),
    padded(nearly, columns.point, 'end'),
    padded(weight, columns.weight, 'end'),
  ]
    .join(gap)
    .trimEnd();

/**
 * A rubric as a table: for each dimension its criteria with perfect, secure, nearly and weight, then where they come
 * from.
 */
export function rubricTable({ id, title, dimensions }: Rubric, width: number): string[] {
  const sources = new Map<string, string[]>();
  for (const { measure, source } of dimensions.flatMap((d) => d.criteria)) {
    sources.set(source, [...(sources.get(source) ?? []), measureName(measure)]);
  }
  return [
    `${printable(title)} (${printable(id)})`,
    '',
    ...hanging(
      '',
      'Secure and nearly are distances from perfect: at secure a figure scores 85 points, at nearly 60.',
      width,
    ),
    '',
    cells('', 'perfect', 'secure', 'nearly', 'weight'),
    ...dimensions.flatMap(({ id: dimension, weight, criteria }) => [
      cells(dimensionName(dimension), '', '', '', rounded(weight)),
      ...criteria.map((criterion) =>
        cells(
          `  ${measureName(criterion.measure)}`,
          perfectOf(criterion),
          amount(criterion.secure, criterion.measure),
          amount(criterion.nearly, criterion.measure),
          rounded(criterion.weight),
        ),
      ),
    ]),
    '',
    'Where the points come from',
    ...[...sources].flatMap(([source, names]) =>
      hanging('  ', `${[...new Set(names)].join(', ')}: ${printable(source)}.`, width),
    ),
  ];
}
