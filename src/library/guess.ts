import Type, { type Static } from 'typebox';
import Schema from 'typebox/schema';
import { type GuessRecord, guessRecords } from '../core/progress/guess-record.ts';
import { judgeGuess } from '../core/progress/judge-guess.ts';
import { keptJson } from './kept-json.ts';
import type { LibraryDb } from './library.ts';
import { LibraryFault } from './library-fault.ts';
import { keptResult } from './stored-result.ts';

const nullable = <T extends Type.TSchema>(schema: T) => Type.Union([schema, Type.Null()]);

/** What the player thought of a take before seeing its figures; null where no answer was given. */
export const guessSchema = Type.Object({
  guessedAt: Type.Integer(),
  /** Line of the sheet that was thought the worst. */
  worstLine: nullable(Type.Integer({ minimum: 0 })),
  tempo: nullable(Type.Union([Type.Literal('rushed'), Type.Literal('dragged'), Type.Literal('held')])),
  /** Whether taps stayed low; older guesses don't say. */
  taps: Type.Optional(nullable(Type.Union([Type.Literal('low'), Type.Literal('too-loud')]))),
});

export type Guess = Static<typeof guessSchema>;

/** Keeps a guess, once: later ones, made with the figures known, change nothing. Returns whether it was kept. */
export async function keepGuess(
  db: LibraryDb,
  { takeId, guess }: { readonly takeId: string; readonly guess: Guess },
): Promise<boolean> {
  if (!Schema.Check(guessSchema, guess))
    throw new LibraryFault('value-out-of-range', {
      what: 'Guess',
      value: JSON.stringify(guess),
      expected: 'A line of the sheet, rushed, dragged or held, and low or too-loud are wanted.',
    });
  const take = await db.selectFrom('take').select('id').where('id', '=', takeId).executeTakeFirst();
  if (take === undefined) throw new LibraryFault('no-such-take');
  const { guessedAt, ...answers } = guess;
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('guess')
    .values({ takeId, guessedAt, answers: JSON.stringify(answers) })
    .onConflict((conflict) => conflict.doNothing())
    .executeTakeFirst();
  return (numInsertedOrUpdatedRows ?? 0n) > 0n;
}

export async function readGuess(db: LibraryDb, takeId: string): Promise<Guess | null> {
  const row = await db.selectFrom('guess').selectAll().where('takeId', '=', takeId).executeTakeFirst();
  return row === undefined
    ? null
    : { guessedAt: row.guessedAt, ...keptJson<Omit<Guess, 'guessedAt'>>(row.answers) };
}

/** A player's guesses, newest take first, for comparing them with what was heard. */
export async function listGuesses(
  db: LibraryDb,
  { personId, limit = 200 }: { readonly personId: string | null; readonly limit?: number },
): Promise<readonly { readonly takeId: string; readonly guess: Guess }[]> {
  const rows = await db
    .selectFrom('take')
    .innerJoin('guess', 'guess.takeId', 'take.id')
    .select(['guess.takeId', 'guess.guessedAt', 'guess.answers'])
    .where('take.personId', 'is', personId)
    .orderBy('take.recordedAt', 'desc')
    .orderBy('take.id', 'desc')
    .limit(limit)
    .execute();
  return rows.map(({ takeId, guessedAt, answers }) => ({
    takeId,
    guess: { guessedAt, ...keptJson<Omit<Guess, 'guessedAt'>>(answers) },
  }));
}

/** How well a player guesses: the guesses of the newest takes that have one, held against what was heard. */
export async function judgedGuesses(
  db: LibraryDb,
  { personId, limit = 100 }: { readonly personId: string | null; readonly limit?: number },
): Promise<readonly GuessRecord[]> {
  const judged = [];
  for (const { takeId, guess } of await listGuesses(db, { personId, limit })) {
    const kept = await db
      .selectFrom('takeResult')
      .select('json')
      .where('takeId', '=', takeId)
      .executeTakeFirst();
    if (kept !== undefined) judged.push(...judgeGuess(guess, keptResult(kept.json)));
  }
  return guessRecords(judged);
}
