import type { TakeResult } from '../../src/core/result/take-result.ts';
import type { NewTake } from '../../src/library/new-take.ts';
import { exampleResult } from '../support/example-result.ts';

export const sheetText = 'title: Accents on 1 and 2\ntempo: 100\ntimes: 3\n\n>RLR >LRL\nR>LR L>RL\n';

const monday = Date.UTC(2026, 2, 9, 17, 30);

/** A recording's bytes that differ from number to number. They needn't be sound: the library never listens. */
export const madeAudio = (number: number, length = 1000): Uint8Array =>
  Uint8Array.from({ length }, (_, i) => (i * 31 + number * 7 + (number >> 8) + (i >> 8)) & 0xff);

/** A take to keep, one a day, each with another recording; `changes` replaces what it says. */
export function madeTake(
  number: number,
  changes: Partial<NewTake> = {},
  result: Partial<TakeResult> = {},
): NewTake {
  const example = exampleResult(result);
  const recordedAt = monday + number * 86_400_000;
  return {
    result: { ...example, recording: { ...example.recording, sha256: null } },
    sheetText,
    audio: { name: `take-${number}.wav`, bytes: madeAudio(number) },
    recordedAt,
    day: new Date(recordedAt).toISOString().slice(0, 10),
    keptAt: recordedAt + 60_000,
    personId: null,
    ...changes,
  };
}
