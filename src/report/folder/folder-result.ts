import Type, { type Static } from 'typebox';
import { takeResultSchema } from '../../core/result/take-result.ts';

const count = Type.Integer({ minimum: 0 });
const score = Type.Object({
  score: Type.Number({ minimum: 0, maximum: 100 }),
  low: Type.Number({ minimum: 0, maximum: 100 }),
  high: Type.Number({ minimum: 0, maximum: 100 }),
  word: Type.Union([Type.Literal('secure'), Type.Literal('nearly'), Type.Literal('not-yet')]),
});

/** What a listing shows of one take. */
const figures = Type.Object({
  /** Title of the sheet, or the labels of its lines. */
  exercise: Type.String(),
  duration: Type.Number({ minimum: 0 }),
  strokes: count,
  missed: count,
  /** Null with too few strokes for a score, or without a grade. */
  overall: Type.Union([score, Type.Null()]),
  dimensions: Type.Array(Type.Object({ id: Type.String(), score })),
  /** Why there is no grade, or null. */
  noGrade: Type.Union([takeResultSchema.properties.warnings.items, Type.Null()]),
  /** Codes and sentences of what to look at, the most useful first: advice, then faults of the recording. */
  attention: Type.Array(Type.Object({ code: Type.String(), sentence: Type.String() })),
});

const folderTake = Type.Object({
  /** The recording, as seen from the folder that was named; untrusted text. */
  recording: Type.String(),
  state: Type.Union([
    Type.Literal('graded'),
    Type.Literal('not-gradable'),
    /** The recording or its sheet can't be read. */
    Type.Literal('unreadable'),
    /** Something else went wrong. */
    Type.Literal('failed'),
  ]),
  /** Graded by an earlier run, and nothing has changed since. */
  earlier: Type.Boolean(),
  /** Null where nothing could be read. */
  figures: Type.Union([figures, Type.Null()]),
  /** What is wrong and what to do, or null. */
  fault: Type.Union([Type.String(), Type.Null()]),
  /** The report and the whole result, as seen from the folder of reports; null where none was asked for. */
  report: Type.Union([Type.String(), Type.Null()]),
  result: Type.Union([Type.String(), Type.Null()]),
});

export const folderResultVersion = 1;

export const folderResultSchema = Type.Object(
  {
    schema: Type.Literal('evenhand-folder-result'),
    version: Type.Literal(folderResultVersion),
    /** Version of the program that looked at the folder. */
    program: Type.String(),
    takes: Type.Array(folderTake),
    counts: Type.Object({
      graded: count,
      notGradable: count,
      unreadable: count,
      failed: count,
      earlier: count,
    }),
  },
  { $id: 'evenhand-folder-result-1' },
);

/** Many recordings graded one by one, in the order of their names. */
export type FolderResult = Static<typeof folderResultSchema>;
export type FolderTake = Static<typeof folderTake>;
export type TakeFigures = Static<typeof figures>;
