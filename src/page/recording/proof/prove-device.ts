import type { Microphone } from '../open-microphone.ts';
import { playAndListen } from '../play-and-listen.ts';
import type { DeviceProof } from './device-proof.ts';
import { judgeDeviceProof } from './judge-device-proof.ts';
import { proofPlan, renderProof } from './proof-plan.ts';

/** Plays the proof's clicks and judges what comes back; null where it was broken off. */
export async function proveDevice(
  microphone: Microphone,
  asked: {
    readonly volume: number;
    readonly stop?: AbortSignal;
    readonly progress?: (share: number) => void;
  },
): Promise<DeviceProof | null> {
  const plan = proofPlan();
  const { sampleRate } = microphone.context;
  const listened = await playAndListen(microphone, renderProof(plan, sampleRate), asked);
  return listened.state === 'heard' ? judgeDeviceProof(listened.samples, plan, sampleRate) : null;
}
