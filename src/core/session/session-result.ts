import Type, { type Static } from 'typebox';
import { takeResultSchema } from '../result/take-result.ts';

const { sheet } = takeResultSchema.properties;
const index = Type.Integer({ minimum: 0 });
const share = Type.Union([Type.Number({ minimum: 0 }), Type.Null()]);
const score = Type.Union([Type.Number({ minimum: 0, maximum: 100 }), Type.Null()]);

/** One repeat of one playing of a line. */
const repeat = Type.Object({
  repeat: index,
  played: index,
  missed: index,
  /** Extra and doubled strokes between its first and last stroke. */
  extra: index,
  /** Root mean square of the strokes' deviations in the local tempo, % of a partial; null with too few of them. */
  unevenShare: share,
  /** The lower of the scores for unevenness and for missed and extra strokes, by the takes' rubric. */
  score,
});

const play = Type.Object({
  /** Index into `takes`. */
  take: index,
  repeats: Type.Array(repeat),
  /** Overall score of the take, or null. */
  score,
  /** First repeat from which at least half of what follows scores below `nearly`; null when it held. */
  brokeFrom: Type.Union([index, Type.Null()]),
});

export const sessionResultVersion = 1;

export const sessionResultSchema = Type.Object(
  {
    schema: Type.Literal('evenhand-session-result'),
    version: Type.Literal(sessionResultVersion),
    recording: Type.Object({
      /** File name without folders; untrusted text. */
      name: Type.String(),
      sha256: Type.Union([Type.String(), Type.Null()]),
      duration: Type.Number({ minimum: 0 }),
    }),
    /** The sheet as asked. */
    sheet,
    takes: Type.Array(
      Type.Object({
        /** Line of the sheet, and how often it was played in a row. */
        line: index,
        repeats: Type.Integer({ minimum: 1 }),
        /** Part of the recording, s; the result's own times count from `from`. */
        from: Type.Number({ minimum: 0 }),
        to: Type.Number({ minimum: 0 }),
        result: takeResultSchema,
      }),
    ),
    /** Playing that fits no line of the sheet, s. */
    unrecognised: Type.Array(
      Type.Object({ from: Type.Number({ minimum: 0 }), to: Type.Number({ minimum: 0 }) }),
    ),
    summary: Type.Object({
      /** One entry a line of the sheet, in its order; `plays` is empty for a line left out. */
      lines: Type.Array(
        Type.Object({
          line: index,
          /** Repeats played, all plays together, and repeats asked. */
          repeats: index,
          asked: Type.Integer({ minimum: 1 }),
          plays: Type.Array(play),
          /** Median of its plays' scores. */
          score,
        }),
      ),
      /** The line with the lowest score, where several have one. */
      weakest: Type.Union([index, Type.Null()]),
    }),
  },
  { $id: 'evenhand-session-result-1' },
);

/** A practice session: its takes, and what became of each line. */
export type SessionResult = Static<typeof sessionResultSchema>;
export type SessionTake = SessionResult['takes'][number];
export type RepeatFigures = Static<typeof repeat>;
export type LineOfSession = SessionResult['summary']['lines'][number];
