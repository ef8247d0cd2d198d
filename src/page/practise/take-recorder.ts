import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import type { SilentStretch } from '../../core/click-track/silent-stretches.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { writeSheet } from '../../core/exercise/write-sheet.ts';
import type { HeardTold } from '../engine/heard-recording.ts';
import { sharedEngine } from '../engine/shared-engine.ts';
import { playAndRecord, type RunningTake } from '../recording/play-and-record.ts';
import type { RecordedTake } from '../recording/recorded-take.ts';
import type { Trouble } from '../recording/recording-trouble.ts';
import { sharedMicrophone, useOfMicrophone } from '../recording/shared-microphone.ts';

export interface StartedTake {
  readonly running: RunningTake;
  /** s of the click track that have left the page. */
  position(): number;
  /** Ends the recording and lets go of the microphone. */
  stop(): Promise<RecordedTake>;
}

interface TakeWish {
  readonly sheet: Sheet;
  readonly plan: ClickPlan;
  readonly volume: number;
  /** Stretches of the click that were held back so far, s of the track. */
  readonly silences: () => readonly SilentStretch[];
  readonly name: string;
  /** Told of the strokes while the take comes. */
  readonly told?: HeardTold | undefined;
  readonly trouble: (trouble: Trouble) => void;
  readonly ended: () => void;
}

/** Opens the microphone and starts a take; a sentence where that can't be. To be called from a press. */
export async function startTake({
  sheet,
  plan,
  volume,
  silences,
  told,
  ...rest
}: TakeWish): Promise<StartedTake | string> {
  const opened = await sharedMicrophone();
  if (opened.state === 'fault') return opened.fault.sentence;
  const { microphone } = opened;
  const letGo = useOfMicrophone();
  try {
    const click = { plan, volume, silences };
    const running = await playAndRecord({
      microphone,
      click,
      sheetText: writeSheet(sheet),
      hear: (sampleRate) => sharedEngine().hear(sampleRate, sheet, told),
      ...rest,
    });
    return {
      running,
      position: () => running.now() + (microphone.context.outputLatency || 0),
      async stop() {
        const recorded = await running.stop();
        letGo();
        return recorded;
      },
    };
  } catch {
    letGo();
    return 'The recording could not be started. Load the page again and try once more.';
  }
}
