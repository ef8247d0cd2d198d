import Type, { type Static } from 'typebox';
import { takeResultVersion } from './take-result-version.ts';

const nullable = <T extends Type.TSchema>(schema: T) => Type.Union([schema, Type.Null()]);
const facts = Type.Record(Type.String(), Type.Union([Type.Number(), Type.String()]));
const hand = Type.Union([Type.Literal('R'), Type.Literal('L')]);

/** A reason or a warning: a code whose sentence stands in `sentences.ts`, and the facts that fill it in. */
const reason = Type.Object({ code: Type.String(), facts });

/** What a check of the recording found, and the measures that it makes wrong, which are then not measurable. */
const finding = Type.Object({ code: Type.String(), facts, spoils: Type.Array(Type.String()) });

/** The part of the take that a measure speaks of; an empty scope is the whole take. */
const scope = Type.Object({
  line: Type.Optional(Type.Integer({ minimum: 0 })),
  repeat: Type.Optional(Type.Integer({ minimum: 0 })),
  hand: Type.Optional(hand),
  partial: Type.Optional(Type.Integer({ minimum: 1 })),
  /** Place relative to an accent. */
  place: Type.Optional(Type.Union([Type.Literal('before'), Type.Literal('on'), Type.Literal('after')])),
});

const outcome = Type.Union([
  Type.Object({
    state: Type.Literal('measured'),
    value: Type.Number(),
    /** Bounds of the 95 % interval. */
    low: Type.Number(),
    high: Type.Number(),
    /** Strokes the value rests on. */
    strokes: Type.Integer({ minimum: 1 }),
    /** Strokes that show the measure at its worst, by index into `strokes`. */
    pointsAt: Type.Array(Type.Integer({ minimum: 0 })),
  }),
  Type.Object({ state: Type.Literal('not-applicable'), reason }),
  Type.Object({ state: Type.Literal('not-measurable'), reason }),
]);

const measured = Type.Object({ id: Type.String(), unit: Type.String(), scope, outcome });

/** secure, nearly and not-yet are places on the rubric's scale. */
const word = Type.Union([Type.Literal('secure'), Type.Literal('nearly'), Type.Literal('not-yet')]);
const score = Type.Object({
  score: Type.Number({ minimum: 0, maximum: 100 }),
  low: Type.Number({ minimum: 0, maximum: 100 }),
  high: Type.Number({ minimum: 0, maximum: 100 }),
  word,
});

const line = Type.Object({
  id: Type.String(),
  label: Type.String(),
  notation: Type.String(),
  repeats: Type.Integer({ minimum: 1 }),
  /** Beats per minute asked for; null when the tempo was left open. */
  bpm: nullable(Type.Number()),
  beatsInBar: Type.Integer({ minimum: 1 }),
  restBeats: Type.Number({ minimum: 0 }),
  leadChange: Type.Boolean(),
  ratioBand: nullable(Type.Object({ minDb: Type.Number(), maxDb: Type.Number() })),
});

/** Columns of equal length, one entry a stroke, in order of time. */
const strokes = Type.Object({
  /** s from the start of the recording, with standard error. */
  time: Type.Array(Type.Number()),
  timeSe: Type.Array(Type.Number()),
  /** dBFS, with standard error. */
  levelDb: Type.Array(Type.Number()),
  levelSe: Type.Array(Type.Number()),
  role: Type.Array(
    Type.Union([
      Type.Literal('matched'),
      Type.Literal('extra'),
      Type.Literal('doubled'),
      Type.Literal('abandoned'),
      Type.Literal('surplus'),
      Type.Literal('outside'),
    ]),
  ),
  slot: Type.Array(nullable(Type.Integer({ minimum: 0 }))),
  /** Hand as played, where the alignment knows it. */
  hand: Type.Array(nullable(hand)),
  /** Deviation from the even place in the local tempo, ms, early negative; null where it isn't measured. */
  deviationMs: Type.Array(nullable(Type.Number())),
});

/** Columns of equal length, one entry an expected stroke, in the order of the sheet. */
const slots = Type.Object({
  line: Type.Array(Type.Integer({ minimum: 0 })),
  repeat: Type.Array(Type.Integer({ minimum: 0 })),
  bar: Type.Array(Type.Integer({ minimum: 0 })),
  beat: Type.Array(Type.Integer({ minimum: 0 })),
  partial: Type.Array(Type.Integer({ minimum: 1 })),
  divisions: Type.Array(Type.Integer({ minimum: 1 })),
  hand: Type.Array(hand),
  accent: Type.Array(Type.Boolean()),
  grace: Type.Array(Type.Boolean()),
  buzz: Type.Array(Type.Boolean()),
  /** Beats from the first beat of the repeat. */
  position: Type.Array(Type.Number()),
  /** Index of the graded stroke on it, or null. */
  stroke: Type.Array(nullable(Type.Integer({ minimum: 0 }))),
  state: Type.Array(
    Type.Union([Type.Literal('played'), Type.Literal('missed'), Type.Literal('not-reached')]),
  ),
});

const segment = Type.Object({
  firstSlot: Type.Integer({ minimum: 0 }),
  lastSlot: Type.Integer({ minimum: 0 }),
  /** `abandoned`: given up and played again; `surplus`: played on top of the repeats asked for. */
  state: Type.Union([Type.Literal('graded'), Type.Literal('abandoned'), Type.Literal('surplus')]),
  /** How it came about; `on`: without a break, where the state or the tempo asked changes, or the beat finds back to a click. */
  began: Type.Optional(
    Type.Union([
      Type.Literal('start'),
      Type.Literal('restart'),
      Type.Literal('slip'),
      Type.Literal('jump'),
      Type.Literal('repeat'),
      Type.Literal('pause'),
      Type.Literal('on'),
    ]),
  ),
  /** Hands exchanged against the sheet, as the sound tells them. */
  leadSwapped: Type.Boolean(),
  from: Type.Number(),
  to: Type.Number(),
  bpm: Type.Number(),
});

/** Where an exercise breaks whose tempo rises line by line. */
const breaking = Type.Object({
  /** Its lines, slowest first. */
  lines: Type.Array(Type.Integer({ minimum: 0 })),
  /** How many of them were begun. */
  played: Type.Integer({ minimum: 0 }),
  /** Beats per minute of the line in which the take ends before the line does, or null. */
  stoppedAt: nullable(Type.Number()),
  dimensions: Type.Array(
    Type.Object({
      id: Type.String(),
      state: Type.Union([Type.Literal('broke'), Type.Literal('held'), Type.Literal('from-the-start')]),
      /** Beats per minute: where it broke, up to where it held, or of the slowest line; null ends are open. */
      bpm: Type.Number(),
      low: nullable(Type.Number()),
      high: nullable(Type.Number()),
      scores: Type.Array(
        Type.Object({
          bpm: Type.Number(),
          score: Type.Number(),
          low: Type.Number(),
          high: Type.Number(),
        }),
      ),
    }),
  ),
});

export const takeResultSchema = Type.Object(
  {
    schema: Type.Literal('evenhand-take-result'),
    version: Type.Literal(takeResultVersion),
    recording: Type.Object({
      /** File name without folders; untrusted text. */
      name: Type.String(),
      /** SHA-256 of the file's bytes in hexadecimal, or null when the recording didn't come from a file. */
      sha256: nullable(Type.String()),
      sampleRate: Type.Number(),
      channels: Type.Integer({ minimum: 1 }),
      duration: Type.Number({ minimum: 0 }),
      noiseFloorDb: Type.Number(),
      /**
       * What levels are: of a sound, dBFS (left out), or of notes that an electronic pad sent, decibels under velocity
       * 127 by the square law. The two never compare.
       */
      levels: Type.Optional(Type.Literal('velocity')),
      /** Peak magnitude (0 … 1) of equal slices of the recording, for drawing it. */
      envelope: Type.Array(Type.Number({ minimum: 0 })),
      /** What is wrong with it, the gravest first; left out where it wasn't checked. */
      check: Type.Optional(Type.Array(finding)),
    }),
    sheet: Type.Object({ title: Type.String(), lines: Type.Array(line) }),
    /** `graded`, or why there is no grade. */
    grading: Type.Union([
      Type.Object({ state: Type.Literal('graded') }),
      Type.Object({ state: Type.Literal('not-gradable'), reason }),
    ]),
    reference: Type.Object({
      kind: Type.Union([
        Type.Literal('played-click'),
        Type.Literal('heard-click'),
        Type.Literal('asked-tempo'),
        Type.Literal('fitted-tempo'),
      ]),
    }),
    strokes,
    slots,
    segments: Type.Array(segment),
    /** Local tempo along the graded segments. */
    tempo: Type.Object({
      time: Type.Array(Type.Number()),
      bpm: Type.Array(Type.Number()),
      segment: Type.Array(Type.Integer({ minimum: 0 })),
    }),
    /** `as-written`: from the sheet; `not-told`: hands can't be trusted in this take. */
    hands: Type.Union([
      Type.Literal('as-written'),
      Type.Literal('confirmed-by-sound'),
      Type.Literal('not-told'),
    ]),
    measures: Type.Array(measured),
    scores: nullable(
      Type.Object({
        rubric: Type.String(),
        /**
         * Where the rubric isn't one of the program's own: the two points of each measure, in its unit from what is
         * perfect, so that parts of the take can be marked the same way.
         */
        points: Type.Optional(
          Type.Array(
            Type.Object({
              measure: Type.String(),
              perfect: Type.Union([Type.Number(), Type.Object({ min: Type.Number(), max: Type.Number() })]),
              secure: Type.Number({ exclusiveMinimum: 0 }),
              nearly: Type.Number({ exclusiveMinimum: 0 }),
            }),
          ),
        ),
        overall: score,
        dimensions: Type.Array(
          Type.Object({
            id: Type.String(),
            score,
            /** The measures behind it, worst first, each with its own score. */
            measures: Type.Array(Type.Object({ id: Type.String(), scope, weight: Type.Number(), score })),
          }),
        ),
      }),
    ),
    /** For each exercise at four tempos or more that rise. */
    breaking: Type.Optional(Type.Array(breaking)),
    /** The take against a model's: differences of place and level, or null without a model. */
    model: Type.Optional(
      nullable(
        Type.Object({
          /** Name of the model's recording; untrusted text. */
          name: Type.String(),
          /** Lines of the sheet that the model doesn't have. */
          linesLeftOut: Type.Integer({ minimum: 0 }),
          measures: Type.Array(
            Type.Object({
              id: Type.String(),
              unit: Type.String(),
              scope: Type.Object({
                line: Type.Integer({ minimum: 0 }),
                partial: Type.Integer({ minimum: 1 }),
                accent: Type.Boolean(),
              }),
              outcome,
              /** Half the width of the band round the model, in the unit. */
              band: Type.Number({ minimum: 0 }),
              /** Where the interval lies: inside the band, above or below it, or across its edge. */
              standing: Type.Union([
                Type.Literal('alike'),
                Type.Literal('above'),
                Type.Literal('below'),
                Type.Literal('not-told'),
              ]),
            }),
          ),
        }),
      ),
    ),
    /** What to work on, the most useful first. */
    advice: Type.Array(
      Type.Object({
        code: Type.String(),
        facts,
        /** Strokes to listen to, by index into `strokes`. */
        strokes: Type.Array(Type.Integer({ minimum: 0 })),
      }),
    ),
    warnings: Type.Array(reason),
    /** What this take couldn't tell, with the cheapest next recording that would. */
    cannotTell: Type.Array(reason),
  },
  { $id: 'evenhand-take-result-1' },
);

/** The document in the middle: all that terminal, report, pictures and library know about a take. */
export type TakeResult = Static<typeof takeResultSchema>;
export type BreakingPoints = Static<typeof breaking>;
export type Reason = Static<typeof reason>;
export type RecordingFinding = Static<typeof finding>;
export type Scope = Static<typeof scope>;
export type Outcome = Static<typeof outcome>;
export type MeasureResult = Static<typeof measured>;
export type ScoreWord = Static<typeof word>;
export type Score = Static<typeof score>;
export type MeasurePoints = NonNullable<NonNullable<TakeResult['scores']>['points']>[number];
