import { describe, expect, it } from 'vitest';
import { seeded } from '../../../fixtures/generator/random.ts';
import { fewestGuesses, guessRecords, type JudgedGuess } from '../../../src/core/progress/guess-record.ts';
import { guessWords } from '../../../src/core/progress/guess-words.ts';

const lines = (right: number, wrong: number, choices = 3): JudgedGuess[] =>
  Array.from({ length: right + wrong }, (_, i) => ({
    question: 'worst-line',
    guessed: '0',
    truth: i < right ? '0' : '1',
    choices,
  }));

describe('guessRecords', () => {
  it("gives the share that is right with Wilson's interval, and one in so many lines as chance", () => {
    const [record] = guessRecords(lines(7, 5));
    // Worked by hand after Wilson 1927: (7/12 + 1.96²/24 ± 1.96·√(7/12·5/12/12 + 1.96²/(4·144))) / (1 + 1.96²/12).
    expect(record).toMatchObject({ question: 'worst-line', guesses: 12, right: 7, chance: 1 / 3 });
    expect(record!.low).toBeCloseTo(0.3195, 4);
    expect(record!.high).toBeCloseTo(0.8067, 4);
    expect(record!.verdict).toBe('not-told');
    expect(guessWords(record!)).toBe(
      "Weakest line: right in 7 of 12 guesses (likely 32 % to 81 %; by chance 33 %). That can't be told from chance yet.",
    );
  });

  it('says better where the whole range lies above chance, worse where it lies below', () => {
    expect(guessRecords(lines(11, 1))[0]!.verdict).toBe('better');
    expect(guessRecords(lines(0, 12))[0]!.verdict).toBe('worse');
    expect(guessRecords(lines(11, 1, 2))[0]!.chance).toBe(0.5);
  });

  it('holds nothing against chance before there are ten, and says how many are needed', () => {
    const [record] = guessRecords(lines(fewestGuesses - 1, 0));
    expect(record!.verdict).toBe('not-told');
    expect(guessWords(record!)).toMatch(/9 of 9 guesses .* 1 more is needed to hold that against chance\.$/);
  });

  // Cohen 1960: agreement by chance is the sum of products of the margins.
  it('takes for chance what the same answers would hit without listening', () => {
    const told = (guessed: string, truth: string, times: number): JudgedGuess[] =>
      Array.from({ length: times }, () => ({ question: 'tempo', guessed, truth, choices: 3 }));
    const always = guessRecords([...told('held', 'held', 18), ...told('held', 'rushed', 2)])[0]!;
    expect(always).toMatchObject({ right: 18, chance: 0.9, verdict: 'not-told' });
    const ear = guessRecords([
      ...told('held', 'held', 10),
      ...told('rushed', 'rushed', 9),
      ...told('held', 'rushed', 1),
    ])[0]!;
    expect(ear.chance).toBeCloseTo(0.55 * 0.5 + 0.45 * 0.5, 12);
    expect(ear.verdict).toBe('better');
  });

  it.each([10, 20, 60])(
    "calls a player who doesn't listen better in at most 5 of 100 cases: %i guesses",
    (count) => {
      const random = seeded(`guesses ${count}`);
      const players = 4000;
      let [lineFalse, tempoFalse] = [0, 0];
      for (let player = 0; player < players; player++) {
        const pick = (shares: readonly number[]) => {
          const at = random.uniform();
          return `${at < shares[0]! ? 0 : at < shares[0]! + shares[1]! ? 1 : 2}`;
        };
        const records = guessRecords(
          Array.from({ length: count }).flatMap((): JudgedGuess[] => [
            { question: 'worst-line', guessed: pick([0.6, 0.2]), truth: pick([1 / 3, 1 / 3]), choices: 3 },
            { question: 'tempo', guessed: pick([0.5, 0.3]), truth: pick([0.6, 0.3]), choices: 3 },
          ]),
        );
        if (records[0]!.verdict === 'better') lineFalse += 1;
        if (records[1]!.verdict === 'better') tempoFalse += 1;
      }
      expect(lineFalse / players).toBeLessThan(0.05);
      expect(tempoFalse / players).toBeLessThan(0.05);
    },
  );

  it('finds most players out who are right in four of five', () => {
    const random = seeded('ears');
    let found = 0;
    for (let player = 0; player < 500; player++) {
      const judged = Array.from({ length: 20 }, (): JudgedGuess => {
        const truth = `${Math.floor(3 * random.uniform())}`;
        const guessed = random.chance(0.8) ? truth : `${(Number(truth) + 1) % 3}`;
        return { question: 'worst-line', guessed, truth, choices: 3 };
      });
      if (guessRecords(judged)[0]!.verdict === 'better') found += 1;
    }
    expect(found / 500).toBeGreaterThan(0.9);
  });

  it('has nothing to say without guesses', () => {
    expect(guessRecords([])).toEqual([]);
  });
});
