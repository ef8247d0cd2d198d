import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import { clicksToFind } from '../../core/grading/clicks-to-find.ts';
import type { RecordingGap } from '../../core/grading/recording-gaps.ts';
import { joined } from '../../core/signal/joined.ts';
import type { HeardRecording } from '../engine/heard-recording.ts';
import { type DelayInUse, delayInUse } from './calibration/delay-in-use.ts';
import { delaysOf } from './calibration/kept-delays.ts';
import { looksWireless } from './calibration/looks-wireless.ts';
import { loadCapture, startCapture } from './capture/start-capture.ts';
import { keepScreenAwake } from './keep-screen-awake.ts';
import { writeTake } from './kept/take-writer.ts';
import { judgeRoom } from './meter/judge-room.ts';
import { type Levels, type Meter, meterAtRest, meterStep } from './meter/level-meter.ts';
import type { Microphone } from './open-microphone.ts';
import { currentOutput } from './output-device.ts';
import { type ClickToPlay, playClicks } from './play-clicks.ts';
import { playedClickOf } from './played-click-of.ts';
import { keptProof } from './proof/kept-proofs.ts';
import type { RecordedTake } from './recorded-take.ts';
import { type Trouble, type TroubleCode, troubleAt } from './recording-trouble.ts';
import { recordingWarnings } from './recording-warnings.ts';
import { setUpOfToday } from './set-up/set-up-of-today.ts';
import { watchInterruptions } from './watch-interruptions.ts';

interface PlayAndRecord {
  readonly microphone: Microphone;
  /** Null records without a click. */
  readonly click: ClickToPlay | null;
  /** The sheet that is played, as text, and the take's name: a recovered recording knows them again. */
  readonly sheetText: string;
  readonly name: string;
  /** Begins to hear the recording while it comes, given its rate in Hz. */
  readonly hear?: (sampleRate: number) => HeardRecording;
  readonly trouble?: (trouble: Trouble) => void;
  /** Called when the recording ends by itself; `stop` then gives what there is. */
  readonly ended?: () => void;
}

export interface RunningTake {
  /** s since the click track began, as it is heard; negative before. */
  now(): number;
  levels(): Levels;
  setVolume(volume: number): void;
  /** Lets the click go on by another plan, from the first click that isn't under way yet: about 2.5 s from now. */
  setPlan(plan: ClickPlan): void;
  stop(): Promise<RecordedTake>;
  /** Ends it and throws everything away for real. */
  discard(): Promise<void>;
}

/** From the call to the first click, s: time for the first blocks to come and for hands to find the sticks. */
const lead = 1;
/** Of that, what is listened to for the noise of the place, s. */
const openingSeconds = 0.7;
/** What was played at the moment of stopping is still under way, s. */
const tail = 0.15;

/** Plays a click track and records what is played to it. Rejects only where the audio thread can't be had. */
export async function playAndRecord(asked: PlayAndRecord): Promise<RunningTake> {
  const { microphone, click, trouble } = asked;
  const proof = keptProof(microphone.deviceId)?.proof ?? null;
  const { context, settings } = microphone;
  const { sampleRate } = context;
  const output = await currentOutput(context);
  // Nothing may come between the first block and what it is counted by.
  await loadCapture(context);
  const troubles: Trouble[] = [];
  const muted: { from: number; to: number | null }[] = [];
  let meter: Meter = meterAtRest;
  /** What comes before the first click tells how quiet the place is. */
  let opening: Float32Array[] | null = [];
  let gapsSeen = 0;
  let stallsSeen = 0;
  const place = () => capture.frames().length;
  const meet = (code: TroubleCode) => {
    const met = troubleAt(code, place() / sampleRate);
    const before = troubles.some((one) => one.code === code);
    troubles.push(met);
    writer.note({ frame: place(), what: code, facts: {} });
    if (!before) trouble?.(met);
  };

  const id = `${Date.now().toString(36)}-${crypto.randomUUID().slice(0, 8)}`;
  const startedAt = new Date().toISOString();
  const { sheetText, name } = asked;
  const writer = writeTake({ id, startedAt, sampleRate, sheetText, name }, (state) => {
    if (state === 'full') meet('storage-full');
    if (state === 'unavailable') meet('not-kept');
  });
  const heard = asked.hear?.(sampleRate) ?? null;
  const capture = await startCapture(context, microphone.input, (samples, at) => {
    writer.samples(at, samples);
    const { clipped } = meter.levels;
    meter = meterStep(meter, samples, sampleRate);
    if (meter.levels.clipped && !clipped) meet('clipped');
    if (opening !== null) {
      opening.push(samples);
      if (at + samples.length > openingSeconds * sampleRate) {
        if (judgeRoom(joined(opening), sampleRate).verdict === 'noisy') meet('noisy');
        opening = null;
      }
    }
    if (capture.frames().gaps.length > gapsSeen) meet('gap');
    gapsSeen = capture.frames().gaps.length;
    if (capture.stalls().length > stallsSeen) meet('busy');
    stallsSeen = capture.stalls().length;
    heard?.add(at, samples);
  });

  let finished: Promise<RecordedTake> | null = null;
  const unwatch = watchInterruptions(
    microphone,
    async () => (await currentOutput(context)).id !== output.id,
    (what) => {
      if (what === 'muted') muted.push({ from: place(), to: null });
      const open = muted.at(-1);
      if (what === 'unmuted' && open !== undefined && open.to === null) open.to = place();
      if (what === 'unmuted') return;
      meet(what === 'muted' ? 'microphone-muted' : what === 'hidden' ? 'page-hidden' : what);
      if (what === 'microphone-ended' || what === 'interrupted') {
        void stop();
        asked.ended?.();
      }
    },
  );
  const sleep = keepScreenAwake();
  const sound = click && playClicks(context, click.plan, { after: lead, volume: click.volume });
  const start = sound?.at ?? context.currentTime;

  function stop(): Promise<RecordedTake> {
    finished ??= finish();
    return finished;
  }

  async function finish(): Promise<RecordedTake> {
    const until = context.currentTime - start;
    sound?.stop();
    const outputNow = currentOutput(context);
    if (context.state === 'running') await new Promise((resolve) => setTimeout(resolve, 1000 * tail));
    capture.stop();
    const { gaps, first, length } = capture.frames();
    const trackStart = start - (first ?? 0) / sampleRate;
    const clickOf = (delay: DelayInUse | null) =>
      sound && playedClickOf(sound.plan(), trackStart, delay, click?.silences?.(), { sampleRate, until });
    heard?.over(clicksToFind(clickOf(null) ?? undefined));
    if ((await outputNow).id !== output.id) meet('output-changed');
    unwatch();
    sleep();
    const way = { outputId: output.id, inputId: microphone.deviceId, sampleRate };
    const delays = delaysOf(way);
    const wireless = looksWireless(output.label, delays.at(-1)?.latency ?? null) !== null;
    const met = (code: TroubleCode) => troubles.some((one) => one.code === code);
    const doubtful = wireless || met('output-changed') || met('busy');
    const delay = doubtful ? null : delayInUse(delays, microphone.session);
    const playedClick = clickOf(delay);
    writer.note({ frame: length, what: 'click', facts: { playedClick } });
    // Its end isn't waited for: what was handed over is there, whatever becomes of the tab.
    void writer.end();
    const silent = muted.map(({ from, to }): RecordingGap => ({ at: from, frames: (to ?? length) - from }));
    return {
      get samples() {
        return capture.samples();
      },
      heard,
      sampleRate,
      gaps: [...gaps, ...silent].filter(({ frames }) => frames > 0).sort((a, b) => a.at - b.at),
      playedClick,
      clickTimes: playedClick?.calibrated ? playedClick.times : null,
      warnings: recordingWarnings(troubles, capture.stalls(), proof),
      troubles,
      device: { input: microphone.label, output: output.label, settings, proof },
      setUpId: setUpOfToday(Date.now()),
      safe: writer.state() === 'writing',
      release: () => writer.remove(),
    };
  }

  return {
    now: () => context.currentTime - (context.outputLatency || 0) - start,
    levels: () => meter.levels,
    setVolume: (volume) => sound?.setVolume(volume),
    setPlan: (plan) => sound?.setPlan(plan),
    stop,
    async discard() {
      await stop();
      heard?.leave();
      await writer.remove();
    },
  };
}
