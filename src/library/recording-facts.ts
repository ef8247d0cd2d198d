import Type, { type Static } from 'typebox';

const facts = Type.Record(Type.String(), Type.Union([Type.Number(), Type.String()]));

/**
 * What was known of a recording besides its sound when it was graded; grading it again needs the same.
 * `src/core/grading` says what each means.
 */
export const recordingFactsSchema = Type.Object({
  playedClick: Type.Optional(
    Type.Object({
      times: Type.Array(Type.Number()),
      audible: Type.Optional(Type.Array(Type.Boolean())),
      sounds: Type.Optional(
        Type.Array(Type.Object({ kind: Type.String(), times: Type.Array(Type.Number()) })),
      ),
      delay: Type.Optional(Type.Number()),
      calibrated: Type.Boolean(),
      uncertaintyMs: Type.Number(),
    }),
  ),
  gaps: Type.Optional(Type.Array(Type.Object({ at: Type.Number(), frames: Type.Number() }))),
  warnings: Type.Optional(Type.Array(Type.Object({ code: Type.String(), facts }))),
});

export type RecordingFacts = Static<typeof recordingFactsSchema>;
