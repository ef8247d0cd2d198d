import type { Scope } from '../result/take-result.ts';

/** Where something stands in a take: what scopes may name. */
export type Place = { readonly [Name in 'line' | 'repeat' | 'hand' | 'partial']: Scope[Name] | null };

/**
 * What belongs to each of several scopes that name the same things, in the order it comes in, gathered in one walk: a
 * long take has thousands of repeats.
 *
 * @example inScopes([{ line: 0 }, { line: 1 }], strokes, placeOf)[1]!.length // strokes of the second line
 */
export function inScopes<T>(
  scopes: readonly Scope[],
  things: readonly T[],
  placeOf: (thing: T) => Place,
): (readonly T[])[] {
  const names = Object.keys(scopes[0] ?? {}) as (keyof Place)[];
  if (names.length === 0) return scopes.map(() => things);
  const keyOf = (place: Place | Scope) => names.map((name) => place[name]).join(' ');
  const groups = new Map(scopes.map((scope): [string, T[]] => [keyOf(scope), []]));
  for (const thing of things) groups.get(keyOf(placeOf(thing)))?.push(thing);
  return scopes.map((scope) => groups.get(keyOf(scope))!);
}
