import type { TakeParcel } from '../../../src/library/take-file/take-parcel.ts';
import { madeAudio, madeTake, sheetText } from '../made-take.ts';

/** A take ready to travel, with two remarks. */
export function madeParcel(number: number, changes: Partial<TakeParcel> = {}): TakeParcel {
  const { result, recordedAt, day } = madeTake(number);
  return {
    player: { id: 'c0ffee00-0000-4000-8000-000000000001', name: 'Mirelle' },
    recordedAt,
    day,
    part: null,
    details: { technique: 'wrist', pad: 'grey pad', sticks: '5A', device: 'phone' },
    tags: ['warm-up'],
    gradedWith: '0.1.0',
    setUp: null,
    guess: { guessedAt: recordedAt, worstLine: 1, tempo: 'rushed' },
    recordingFacts: {
      playedClick: {
        times: [1, 1.6],
        sounds: [{ kind: 'beat', times: [0.9, 1.5] }],
        delay: 0.1,
        calibrated: true,
        uncertaintyMs: 0.4,
      },
      gaps: [{ at: 3.5, frames: 128 }],
      warnings: [{ code: 'samples-lost', facts: { frames: 128 } }],
    },
    audio: { name: `take ${number}.wav`, bytes: madeAudio(number) },
    sheetText,
    result,
    remarks: [
      {
        id: `r${number}-1`,
        moment: null,
        text: 'Much calmer than last week.',
        author: 'Teacher',
        writtenAt: 5,
        changedAt: 5,
      },
      {
        id: `r${number}-2`,
        moment: 12.5,
        text: 'Listen to the taps here.',
        author: 'Teacher',
        writtenAt: 6,
        changedAt: 6,
      },
    ],
    ...changes,
  };
}
