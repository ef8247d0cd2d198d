import type { Microphone } from '../open-microphone.ts';
import { currentOutput } from '../output-device.ts';
import { playAndListen } from '../play-and-listen.ts';
import { calibrationPlan, renderCalibration } from './calibration-plan.ts';
import { forgetDelays, keepDelay } from './kept-delays.ts';
import { looksWireless } from './looks-wireless.ts';
import { type LatencyOutcome, measureLatency } from './measure-latency.ts';

/** What came of measuring an output's delay. Delay and uncertainty in s. */
export type CalibrationOutcome =
  | Extract<LatencyOutcome, { state: 'measured' }>
  | {
      readonly state: 'wireless';
      readonly by: 'name' | 'latency' | 'spread';
      readonly latency: number | null;
    }
  | { readonly state: 'not-heard' }
  | { readonly state: 'broken-off' };

/**
 * Measures the delay of the output in use, and keeps it for this output, this microphone and this sampling rate. A
 * wireless output, by its name, by a delay over 0.1 s or by an unsteady one, gets none.
 */
export async function calibrateDelay(
  microphone: Microphone,
  asked: {
    readonly volume: number;
    readonly stop?: AbortSignal;
    readonly progress?: (share: number) => void;
  },
): Promise<CalibrationOutcome> {
  const { context, deviceId, session } = microphone;
  const { sampleRate } = context;
  const output = await currentOutput(context);
  const way = { outputId: output.id, inputId: deviceId, sampleRate };
  if (looksWireless(output.label, null) !== null) {
    forgetDelays(way);
    return { state: 'wireless', by: 'name', latency: null };
  }
  const plan = calibrationPlan();
  const listened = await playAndListen(microphone, renderCalibration(plan, sampleRate), asked);
  if (listened.state === 'broken-off') return listened;
  const outcome = measureLatency(listened.samples, plan, sampleRate);
  if (outcome.state === 'not-heard') return outcome;
  const { latency } = outcome;
  const late = looksWireless('', latency) !== null;
  if (outcome.state === 'unsteady' || late) {
    forgetDelays(way);
    return { state: 'wireless', by: late ? 'latency' : 'spread', latency };
  }
  const { se } = outcome;
  keepDelay({ ...way, latency, se, session, measuredAt: new Date().toISOString() });
  return outcome;
}
