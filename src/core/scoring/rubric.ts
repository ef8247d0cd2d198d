import Type, { type Static } from 'typebox';

const band = Type.Object({ min: Type.Number(), max: Type.Number() }, { additionalProperties: false });

const criterion = Type.Object({
  /** Id of the measure, of the whole take. */
  measure: Type.String(),
  /** Share in its dimension, relative to the other measures there. */
  weight: Type.Number({ exclusiveMinimum: 0 }),
  perfect: Type.Union([Type.Number(), band]),
  /** Distance from perfect that scores 85, in the measure's unit. */
  secure: Type.Number({ exclusiveMinimum: 0 }),
  /** Distance from perfect that scores 60. */
  nearly: Type.Number({ exclusiveMinimum: 0 }),
  /** Where the two points come from. */
  source: Type.String(),
});

const dimension = Type.Object({
  id: Type.String(),
  weight: Type.Number({ exclusiveMinimum: 0 }),
  criteria: Type.Array(criterion),
});

const rubric = Type.Object({ id: Type.String(), title: Type.String(), dimensions: Type.Array(dimension) });

/** How figures become scores: dimensions of measures, each with its two points and weights. */
export type Rubric = Static<typeof rubric>;
export type Criterion = Static<typeof criterion>;

const closed = { additionalProperties: false } as const;

/** A teacher's file: a shipped rubric's id and what is changed of it. */
export const rubricChangesSchema = Type.Object(
  {
    basedOn: Type.String(),
    id: Type.Optional(Type.String({ minLength: 1 })),
    title: Type.Optional(Type.String({ minLength: 1 })),
    /** By dimension. */
    dimensions: Type.Optional(
      Type.Record(Type.String(), Type.Object({ weight: Type.Number({ minimum: 0 }) }, closed)),
    ),
    /** By measure. A weight of 0 leaves the measure, or the dimension, out. */
    measures: Type.Optional(
      Type.Record(
        Type.String(),
        Type.Object(
          {
            weight: Type.Optional(Type.Number({ minimum: 0 })),
            perfect: Type.Optional(Type.Union([Type.Number(), band])),
            secure: Type.Optional(Type.Number({ exclusiveMinimum: 0 })),
            nearly: Type.Optional(Type.Number({ exclusiveMinimum: 0 })),
            source: Type.Optional(Type.String()),
          },
          closed,
        ),
      ),
    ),
  },
  { ...closed, $id: 'evenhand-rubric-1' },
);

export type RubricChanges = Static<typeof rubricChangesSchema>;
