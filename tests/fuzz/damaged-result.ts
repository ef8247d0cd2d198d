import type { Random } from '../../fixtures/generator/random.ts';

type Json = Record<string, unknown> | unknown[];
type Path = readonly string[];

function places(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, one]) => places(one, [...path, key]));
  return path.length === 0 ? inner : [path, ...inner];
}

/** Places of a document by their shape, so that long columns don't crowd out the rest. */
export function shapesOf(document: unknown): readonly (readonly Path[])[] {
  const byShape = new Map<string, Path[]>();
  for (const path of places(document)) {
    const shape = path.map((key) => (/^\d+$/.test(key) ? '*' : key)).join('/');
    byShape.set(shape, [...(byShape.get(shape) ?? []), path]);
  }
  return [...byShape.values()];
}

function other(value: unknown, random: Random): unknown {
  if (Array.isArray(value))
    return random.pick([[], value.slice(0, value.length >> 1), [...value, ...value.slice(0, 3)]]);
  if (typeof value === 'number') return random.pick([0, -1, 1e9, value + 1, 1e-300, -value, 0.5]);
  if (typeof value === 'string') return random.pick(['', 'x', '<script>', 'rest']);
  return typeof value === 'boolean' ? !value : random.pick([0, 1, 99_999, null]);
}

/** A copy of a document in which one value is another of its kind. */
export function damaged<T>(document: T, shapes: readonly (readonly Path[])[], random: Random): T {
  const copy = structuredClone(document);
  const path = random.pick(random.pick(shapes));
  const parent = path
    .slice(0, -1)
    .reduce<Json>((at, key) => (at as Record<string, Json>)[key]!, copy as Json);
  const [key] = path.slice(-1);
  const at = parent as Record<string, unknown>;
  if (Array.isArray(parent) && random.chance(0.2)) parent.splice(Number(key), 1);
  else at[key!] = other(at[key!], random);
  return copy;
}
