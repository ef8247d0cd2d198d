/** One place at which two results differ: figures with how far apart they are. */
export interface ResultDifference {
  readonly path: string;
  readonly one: unknown;
  readonly other: unknown;
  /** Of the greater of the figure and a thousandth of its unit; infinite for texts, whole numbers, states and lengths. */
  readonly share: number;
}

/** Where two results differ at all, in order of their places. */
export function resultDifferences(one: unknown, other: unknown, path = ''): ResultDifference[] {
  if (Object.is(one, other)) return [];
  if (typeof one === 'number' && typeof other === 'number') {
    const counted = Number.isInteger(one) && Number.isInteger(other);
    const share = counted ? Number.POSITIVE_INFINITY : Math.abs(one - other) / Math.max(Math.abs(one), 1e-3);
    return one === other ? [] : [{ path, one, other, share }];
  }
  if (typeof one !== 'object' || one === null || typeof other !== 'object' || other === null)
    return [{ path, one, other, share: Number.POSITIVE_INFINITY }];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  const part = (of: object, key: string) => (of as Readonly<Record<string, unknown>>)[key];
  return [...keys].flatMap((key) => resultDifferences(part(one, key), part(other, key), `${path}/${key}`));
}
