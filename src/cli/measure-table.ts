import { figure, shownUnit } from '../core/result/figures.ts';
import { measureNames } from '../core/result/measure-names.ts';
import { isForExport, measureList, measureName } from '../core/result/names.ts';
import type { MeasureResult, Scope, TakeResult } from '../core/result/take-result.ts';
import { findMeasure, measuredOutcome } from '../core/scoring/find-measure.ts';
import { hanging, padded, type Styles, wrapped } from './text-layout.ts';

const columns = { name: 23, value: 9, range: 14 } as const;
const gap = '  ';

/** Narrower than this, what a figure says is left out. */
const leastRoom = 20;

/** Parts of a take that get a row of their own below the whole take's, by measure. */
const parts: Readonly<Record<string, (scope: Scope) => string | null>> = {
  placement: ({ partial }) => (partial === undefined ? null : `partial ${partial}`),
  'accent-bend': ({ place }) => (place === undefined ? null : `${place} an accent`),
  'accent-to-tap-ratio': ({ hand, line, repeat }) => {
    if (repeat !== undefined) return null;
    if (hand !== undefined) return hand === 'R' ? 'right hand' : 'left hand';
    return line === undefined ? null : `line ${line + 1}`;
  },
};

const isWhole = (scope: Scope) => Object.values(scope).every((value) => value === undefined);

/** What the figure says in brief, and its share of a partial where there is one. */
function saying(measures: readonly MeasureResult[], id: string): string {
  const share = measuredOutcome(measures, `${id}-share`);
  const says = measureNames[id]?.brief ?? '';
  return share ? `${says}; ${figure(share.value, '%')} % of a partial` : says;
}

/** Rows of all measures: name, value, 95 % interval and what it says; what doesn't apply comes last. */
export function measureTable(result: TakeResult, width: number, styles: Styles): string[] {
  const { measures } = result;
  const left = 2 + columns.name + gap.length + columns.value + gap.length + columns.range + gap.length;
  const room = width - left;
  const row = (name: string, { outcome, unit }: MeasureResult, says: string): string[] => {
    const label = `  ${padded(name, columns.name)}`;
    if (outcome.state !== 'measured') return [`${label}${gap}– ${styles.faint("couldn't be measured")}`];
    const [first = '', ...more] = room < leastRoom ? [] : wrapped(says, room);
    const cells = [
      label,
      styles.figure(padded(`${figure(outcome.value, unit)} ${shownUnit(unit)}`, columns.value, 'end')),
      padded(`${figure(outcome.low, unit)} to ${figure(outcome.high, unit)}`, columns.range, 'end'),
      first && styles.faint(first),
    ];
    return [cells.join(gap).trimEnd(), ...more.map((line) => ' '.repeat(left) + styles.faint(line))];
  };
  const shown = measures.filter(
    ({ id, scope }) =>
      isWhole(scope) &&
      !isForExport(id) &&
      !(id.endsWith('-share') && findMeasure(measures, id.slice(0, -6))),
  );
  const applies = ({ outcome }: MeasureResult) => outcome.state !== 'not-applicable';
  const others = shown.filter((whole) => !applies(whole)).map(({ id }) => id);
  const absent = others.length === 0 ? '' : `Doesn't apply here: ${measureList(others.join(','))}.`;
  return [
    ...shown.filter(applies).flatMap((whole) => [
      ...row(measureName(whole.id), whole, saying(measures, whole.id)),
      ...measures.flatMap((part) => {
        const name = part.id === whole.id ? parts[part.id]?.(part.scope) : null;
        return name && part.outcome.state === 'measured' ? row(`  ${name}`, part, '') : [];
      }),
    ]),
    ...(absent === '' ? [] : hanging('  ', absent, width).map(styles.faint)),
  ];
}
