import Type, { type Static } from 'typebox';
import { guessSchema } from '../guess.ts';
import { recordingFactsSchema } from '../recording-facts.ts';
import { setUpSchema } from '../set-up.ts';

const nullable = <T extends Type.TSchema>(schema: T) => Type.Union([schema, Type.Null()]);
const name = Type.String({ maxLength: 1000 });
const moment = Type.Integer({ minimum: -8.64e15, maximum: 8.64e15 });
const day = Type.String({ pattern: '^\\d{4}-\\d{2}-\\d{2}$' });

/** A file of the archive, and what it must be. */
const file = Type.Object({
  path: Type.String(),
  bytes: Type.Integer({ minimum: 0 }),
  sha256: Type.String({ pattern: '^[0-9a-f]{64}$' }),
});

const take = Type.Object({
  player: nullable(Type.Object({ id: Type.String({ minLength: 1, maxLength: 100 }), name })),
  recordedAt: moment,
  /** The player's own calendar day. */
  day,
  part: nullable(Type.Object({ from: Type.Number({ minimum: 0 }), to: Type.Number({ minimum: 0 }) })),
  technique: name,
  pad: name,
  sticks: name,
  device: name,
  tags: Type.Array(name, { maxItems: 100 }),
  gradedWith: name,
  setUp: nullable(setUpSchema),
  guess: nullable(guessSchema),
  recordingFacts: recordingFactsSchema,
  files: Type.Object({
    audio: nullable(Type.Object({ ...file.properties, name })),
    sheet: file,
    result: file,
    remarks: file,
  }),
});

export const takeFileVersion = 1;

/** `manifest.json` of a take file. Fields that aren't known are passed over. */
export const takeFileManifestSchema = Type.Object({
  format: Type.Literal('evenhand-take-file'),
  version: Type.Literal(takeFileVersion),
  takes: Type.Array(take, { minItems: 1 }),
});

export type TakeFileManifest = Static<typeof takeFileManifestSchema>;
export type ManifestTake = TakeFileManifest['takes'][number];
export type ManifestFile = Static<typeof file>;

/** `remarks.json` of a take. */
export const remarksFileSchema = Type.Array(
  Type.Object({
    id: Type.String({ minLength: 1, maxLength: 100 }),
    /** s from the start of the recording; null for the whole take. */
    moment: nullable(Type.Number({ minimum: 0 })),
    text: Type.String({ minLength: 1, maxLength: 10_000 }),
    author: name,
    writtenAt: moment,
    changedAt: moment,
  }),
);

export type RemarkInFile = Static<typeof remarksFileSchema>[number];
