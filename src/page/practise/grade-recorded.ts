import type { Sheet } from '../../core/exercise/sheet.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import type { PlayedClick } from '../../core/grading/click-to-hold-against.ts';
import { writeWav } from '../../formats/write-wav.ts';
import type { TakeFacts } from '../engine/engine-messages.ts';
import type { HeardResult } from '../engine/heard-recording.ts';
import { sharedEngine } from '../engine/shared-engine.ts';
import { localDay } from '../library/local-day.ts';
import type { RecordedTake } from '../recording/recorded-take.ts';
import type { ShownTake } from '../result/shown-take.ts';
import { keptPlayedOn } from './played-on.tsx';

interface RecordedFacts {
  readonly sheet: Sheet;
  readonly name: string;
  readonly guessFirst: boolean;
  readonly discomfort: boolean;
  /** When it was played, ms since 1970; now unless given. */
  readonly recordedAt?: number;
}

/**
 * Grades a recording and puts it into the library: what is graded is the file that is kept, so that grading it again
 * gives the same. Rejects with `EngineFault`.
 */
export async function gradeRecorded(recorded: RecordedTake, facts: RecordedFacts): Promise<ShownTake> {
  const { gaps, playedClick, warnings } = recorded;
  const { sheet, name, guessFirst, discomfort } = facts;
  const { result, bytes } = await graded(recorded, {
    name,
    sheet,
    gaps,
    warnings,
    discomfort,
    ...(playedClick === null ? {} : { playedClick }),
  });
  const sound = { bytes };
  const keeping = keep().then(
    (id) => ({ id, fault: null }),
    async (error: unknown) => {
      const { faultInWords } = await import('../library/fault-words.ts');
      return { id: null, fault: `Not kept: ${faultInWords(error)}` };
    },
  );
  return {
    result,
    sound,
    kept: keeping.then(({ id }) => id),
    fault: keeping.then(({ fault }) => fault),
    guessFirst,
  };

  async function keep(): Promise<string> {
    const { keepGradedTake } = await import('../library/keep-graded-take.ts');
    const { id } = await keepGradedTake({
      result,
      sheetText: writeSheet(sheet),
      audio: { name, bytes },
      recordingFacts: {
        gaps: [...gaps],
        warnings: [...warnings],
        ...(playedClick === null ? {} : { playedClick: factsOf(playedClick) }),
      },
      details: { ...keptPlayedOn(), device: recorded.device.input },
      setUpId: recorded.setUpId,
      ...(facts.recordedAt === undefined ? {} : { recordedAt: facts.recordedAt }),
    });
    // The library has it now: the copy made while recording can go.
    await recorded.release();
    return id;
  }
}

const factsOf = ({ times, audible, sounds, ...rest }: PlayedClick) => ({
  ...rest,
  times: [...times],
  ...(audible === undefined ? {} : { audible: [...audible] }),
  ...(sounds === undefined
    ? {}
    : { sounds: sounds.map(({ kind, times: put }) => ({ kind, times: [...put] })) }),
});

/** From what was heard while it came, or else all at once. */
async function graded({ heard, samples, sampleRate }: RecordedTake, facts: TakeFacts): Promise<HeardResult> {
  const along = (await heard?.grade(facts)) ?? null;
  if (along !== null) return along;
  const bytes = writeWav({ channels: [samples], sampleRate, depth: 'int24' });
  return { result: await sharedEngine().grade({ bytes }, facts), bytes };
}

/** Name of a take's file: the day and the time by the clock on the wall. */
export function takeName(date: Date): string {
  const two = (value: number) => `${value}`.padStart(2, '0');
  return `take-${localDay(date.getTime())}-${two(date.getHours())}${two(date.getMinutes())}.wav`;
}
