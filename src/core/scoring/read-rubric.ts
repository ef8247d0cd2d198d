import Schema from 'typebox/schema';
import { type Criterion, type Rubric, type RubricChanges, rubricChangesSchema } from './rubric.ts';
import { rubrics } from './rubrics/index.ts';

/** A rubric file that can't be used: where the fault lies in it, what stands there and what may stand there. */
export class InvalidRubric extends Error {
  constructor(
    /** Path with slashes, empty for the whole file. */
    readonly path: string,
    readonly found: string,
    readonly allowed: string,
  ) {
    super(`rubric: ${path || 'the file'} is ${found} (allowed: ${allowed})`);
    this.name = 'InvalidRubric';
  }
}

/** Signs of a value that a sentence shows. Our judgement. */
const mostShown = 80;

function shown(value: unknown): string {
  if (value === undefined) return 'missing';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > mostShown ? `${text.slice(0, mostShown)}…` : text;
}

const list = (ids: readonly string[]): string => ids.join(', ');

function valueAt(value: unknown, path: string): unknown {
  const keys = path.split('/').slice(1);
  return keys.reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], value);
}

/** Entries that may stand at a path of the file. */
function entriesAt(path: string): string {
  if (path.startsWith('/dimensions/')) return 'weight';
  if (path.endsWith('/perfect')) return 'min, max';
  return path.startsWith('/measures/')
    ? 'weight, perfect, secure, nearly, source'
    : 'basedOn, id, title, dimensions, measures';
}

function checkedShape(value: unknown): RubricChanges {
  const [valid, errors] = Schema.Errors(rubricChangesSchema, value);
  if (valid) return value as RubricChanges;
  const union = errors.find((e) => e.keyword === 'anyOf');
  if (union) {
    const found = shown(valueAt(value, union.instancePath));
    throw new InvalidRubric(union.instancePath, found, 'a number, or a band {"min": number, "max": number}');
  }
  const fault = errors.find((e) => e.keyword !== 'boolean') ?? errors[0]!;
  const path = fault.instancePath;
  const params = fault.params as { requiredProperties?: string[]; additionalProperties?: string[] };
  const missing = params.requiredProperties?.[0];
  if (missing) {
    const needed = missing === 'basedOn' ? list(rubrics.map(({ id }) => id)) : 'a number from 0 up';
    throw new InvalidRubric(`${path}/${missing}`, 'missing', needed);
  }
  const unknown = params.additionalProperties?.[0];
  if (unknown) throw new InvalidRubric(`${path}/${unknown}`, 'not a known entry', entriesAt(path));
  throw new InvalidRubric(path, shown(valueAt(value, path)), fault.message.replace(/^must be /, ''));
}

function changed(criterion: Criterion, changes: RubricChanges): Criterion {
  const change = changes.measures?.[criterion.measure];
  if (!change) return criterion;
  const path = `/measures/${criterion.measure}`;
  const result = { ...criterion, source: 'the rubric file', ...change };
  if (typeof result.perfect !== 'number' && result.perfect.min >= result.perfect.max)
    throw new InvalidRubric(`${path}/perfect`, shown(result.perfect), 'a band whose min lies below its max');
  if (result.secure >= result.nearly)
    throw new InvalidRubric(
      path,
      `secure ${result.secure}, nearly ${result.nearly}`,
      'secure smaller than nearly',
    );
  return result;
}

/**
 * Reads a teacher's rubric (parsed JSON): the id of a shipped rubric to start from, and what differs. A weight of 0
 * leaves a measure or a dimension out. Throws `InvalidRubric`.
 *
 * @example readRubric({ basedOn: 'steady', measures: { 'timing-spread-share': { secure: 4, nearly: 8 } } })
 */
export function readRubric(value: unknown): Rubric {
  const changes = checkedShape(value);
  const base = rubrics.find((rubric) => rubric.id === changes.basedOn);
  if (!base) throw new InvalidRubric('/basedOn', shown(changes.basedOn), list(rubrics.map((r) => r.id)));
  const dimensionIds = base.dimensions.map((d) => d.id);
  for (const id of Object.keys(changes.dimensions ?? {}))
    if (!dimensionIds.includes(id))
      throw new InvalidRubric(`/dimensions/${id}`, 'no dimension', list(dimensionIds));
  const measureIds = base.dimensions.flatMap((d) => d.criteria.map((c) => c.measure));
  for (const id of Object.keys(changes.measures ?? {}))
    if (!measureIds.includes(id))
      throw new InvalidRubric(`/measures/${id}`, 'no scored measure', list(measureIds));
  const dimensions = base.dimensions
    .map((dimension) => ({
      ...dimension,
      weight: changes.dimensions?.[dimension.id]?.weight ?? dimension.weight,
      criteria: dimension.criteria.map((c) => changed(c, changes)).filter((c) => c.weight > 0),
    }))
    .filter((dimension) => dimension.weight > 0 && dimension.criteria.length > 0);
  if (dimensions.length === 0)
    throw new InvalidRubric('', 'without any measure', 'at least one weight above 0');
  return {
    id: changes.id ?? `${base.id}-changed`,
    title: changes.title ?? `${base.title}, changed`,
    dimensions,
  };
}
