import { type ClickPlan, plainClick } from '../../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../../src/core/click-track/plan-clicks.ts';
import { parseSheet } from '../../../src/core/exercise/parse-sheet.ts';
import { calibrateDelay } from '../../../src/page/recording/calibration/calibrate-delay.ts';
import { recoverTakes } from '../../../src/page/recording/kept/recover-takes.ts';
import { type Microphone, openMicrophone } from '../../../src/page/recording/open-microphone.ts';
import { playAndRecord, type RunningTake } from '../../../src/page/recording/play-and-record.ts';
import { proveDevice } from '../../../src/page/recording/proof/prove-device.ts';
import type { Trouble } from '../../../src/page/recording/recording-trouble.ts';

import { loopBack } from './loop-back.ts';

/** Samples as text that a test can carry out of the page. */
const asText = (samples: Float32Array) => {
  const bytes = new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
  let text = '';
  for (let at = 0; at < bytes.length; at += 0x8000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
};

let microphone: Microphone | undefined;
let running: RunningTake | undefined;
let plan: ClickPlan | undefined;
const troubles: Trouble[] = [];

let captured: AudioNode | undefined;
const connect = AudioNode.prototype.connect as (this: AudioNode, target: AudioNode) => AudioNode;
AudioNode.prototype.connect = function (this: AudioNode, target: AudioNode) {
  if (target instanceof AudioWorkletNode) captured = target;
  return connect.call(this, target);
} as typeof AudioNode.prototype.connect;

/** What the tests do in the page. */
const recording = {
  troubles,
  async open(sampleRate: number) {
    const opened = await openMicrophone({ context: new AudioContext({ sampleRate }) });
    if (opened.state === 'fault') return opened.fault;
    microphone = opened.microphone;
    const { label, settings } = microphone;
    return { label, settings, sampleRate: microphone.context.sampleRate };
  },
  async start(sheetText: string, withClick = true) {
    const parsed = parseSheet(sheetText);
    if (!parsed.ok) throw new Error('sheet');
    plan = planClicks(parsed.sheet, plainClick);
    running = await playAndRecord({
      microphone: microphone!,
      click: withClick ? { plan, volume: 0.5 } : null,
      sheetText,
      name: 'Tuesday',
      trouble: (one) => troubles.push(one),
    });
  },
  async stop(release: boolean) {
    const take = await running!.stop();
    if (release) await take.release();
    const { samples, ...rest } = take;
    return { ...rest, samples: asText(samples) };
  },
  loop(sampleRate: number, frames: number, gainDb: number) {
    microphone = loopBack(sampleRate, frames, gainDb);
  },
  prove: () => proveDevice(microphone!, { volume: 1 }),
  calibrate: () => calibrateDelay(microphone!, { volume: 1 }),
  /** Takes the microphone off the audio thread for a while. */
  async loseFor(ms: number) {
    const { input } = microphone!;
    const target = captured!;
    input.disconnect(target);
    await new Promise((resolve) => setTimeout(resolve, ms));
    input.connect(target);
  },
  suspend: () => microphone!.context.suspend(),
  hide() {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
    Object.defineProperty(document, 'visibilityState', { value: 'visible', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  },
  async muteFor(ms: number) {
    microphone!.track.dispatchEvent(new Event('mute'));
    await new Promise((resolve) => setTimeout(resolve, ms));
    microphone!.track.dispatchEvent(new Event('unmute'));
  },
  async switchOutput() {
    const devices = await navigator.mediaDevices.enumerateDevices();
    const other = devices.find(
      ({ kind, label }) => kind === 'audiooutput' && label === 'Fake Audio Output 1',
    );
    const context = microphone!.context as AudioContext & { setSinkId(id: string): Promise<void> };
    await context.setSinkId(other!.deviceId);
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
  },
  endTrack: () => microphone!.track.dispatchEvent(new Event('ended')),
  /** Silences every click that isn't under way yet. */
  silence() {
    running!.setPlan({ ...plan!, clicks: plan!.clicks.map((click) => ({ ...click, audible: false })) });
  },
  levels: () => running!.levels(),
  async recovered() {
    const takes = await recoverTakes();
    return Promise.all(
      takes.map(async (take) => {
        const { samples, ...sound } = await take.load();
        const { id, startedAt, sheetText, name, seconds } = take;
        return { id, startedAt, sheetText, name, seconds, ...sound, samples: asText(samples) };
      }),
    );
  },
  async removeAll() {
    for (const take of await recoverTakes()) await take.remove();
  },
};

export type RecordingInPage = typeof recording;
Object.assign(globalThis, { recording });
