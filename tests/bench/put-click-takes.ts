import { convolve } from '../../fixtures/generator/convolve.ts';
import { limitBand, type Microphone, microphones } from '../../fixtures/generator/microphone.ts';
import { seeded } from '../../fixtures/generator/random.ts';
import { type Room, roomResponse } from '../../fixtures/generator/room.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import type { KindName } from '../../fixtures/generator/stroke-kinds.ts';
import { plainTake } from '../../fixtures/generator/take-spec.ts';
import { type ClickOptions, type ClickPlan, plainClick } from '../../src/core/click-track/click-plan.ts';
import { clickSamples } from '../../src/core/click-track/click-samples.ts';
import { clickVoice } from '../../src/core/click-track/click-voices.ts';
import { planClicks } from '../../src/core/click-track/plan-clicks.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import type { PlayedClick } from '../../src/core/grading/click-to-hold-against.ts';
import { delayed } from '../../src/core/signal/fractional-read.ts';
import { playedClickOf } from '../../src/page/recording/played-click-of.ts';
import { type BenchTake, benchTake } from './bench-take.ts';
import { playedAsTimed, playRisingSheet, type RisingPlayer } from './breakdown-takes.ts';

/** Where a take is recorded, from the loudspeaker and the sticks to the file. */
export interface Place {
  readonly name: string;
  readonly room: Room | null;
  readonly microphone: Microphone;
}

export const places: readonly Place[] = [
  { name: 'dry', room: null, microphone: microphones.plain },
  { name: 'bedroom', room: rooms[0]!, microphone: microphones.plain },
  { name: 'school', room: rooms[2]!, microphone: microphones.plain },
  { name: 'phone, living room', room: rooms[1]!, microphone: microphones.phone },
];

export interface ClickTake {
  readonly sheet: Sheet;
  readonly place: Place;
  readonly click: Partial<ClickOptions>;
  /** Peak of the click at the microphone before the room, dBFS. */
  readonly clickDb: number;
  readonly kind: KindName;
  readonly player: RisingPlayer;
  readonly seed: string;
}

/** The way of the click: s from the page's clock to the microphone's, and how much faster that one runs. */
const delays = { least: 0.01, most: 0.25 };
export const clocksApart = 30e-6;
const sampleRate = 24000;
const levels = { accentDb: -10, contrastDb: 14, noiseDb: -65 };

/** A take with the page's click in the microphone, and what the page knows of that click. */
export function takeWithClick(asked: ClickTake): {
  readonly take: BenchTake;
  readonly playedClick: PlayedClick;
  /** s. */
  readonly delay: number;
} {
  const { sheet, place, kind, player, seed } = asked;
  const random = seeded(seed);
  const plan = planClicks(sheet, { ...plainClick, ...asked.click });
  const slots = playRisingSheet(sheet, player, random.fork('play'));
  const delay = random.between(delays.least, delays.most);
  const take = benchTake(seed, place.name, {
    ...plainTake,
    seed: Math.floor(random.uniform() * 1e9),
    sampleRate,
    slots: slots.sort((a, b) => a.time - b.time),
    bpm: sheet.lines[0]!.bpm!,
    kind,
    room: place.room,
    microphone: { ...place.microphone, quantise: false },
    noise: { colour: 'pink', levelDb: levels.noiseDb },
    player: playedAsTimed(levels.accentDb, levels.contrastDb),
    leadSeconds: plan.firstBeat + 0.5 + delay,
    tailSeconds: 1.5,
  });
  const first = take.truth.strokes[0]!.time - slots[0]!.time;
  const trackAt = first - plan.firstBeat - delay;
  const heard = clicksAtMicrophone(plan, { ...asked, trackAt, delay, length: take.samples.length });
  const samples = take.samples.map((sample, i) => {
    const sum = Math.round((sample + heard[i]!) * 2 ** 23) / 2 ** 23;
    return Math.max(-1, Math.min(1, sum));
  });
  const playedClick = playedClickOf(plan, trackAt, null, [], { sampleRate });
  // The clocks have run apart from the track's start on.
  return { take: { ...take, samples }, playedClick, delay };
}

function clicksAtMicrophone(
  plan: ClickPlan,
  asked: ClickTake & { readonly trackAt: number; readonly delay: number; readonly length: number },
): Float64Array {
  const { place, clickDb, trackAt, delay, length } = asked;
  const gain = 10 ** (clickDb / 20);
  const dry = new Float64Array(length);
  for (const { time, kind, audible } of plan.clicks) {
    if (!audible) continue;
    const samples = clickSamples(clickVoice(plan.sound, kind, plan.bell), sampleRate);
    const put = Math.round(time * sampleRate) / sampleRate;
    const at = (trackAt + delay + put * (1 + clocksApart)) * sampleRate;
    const from = Math.floor(at);
    delayed(samples, at - from).forEach((sample, i) => {
      // `delayed` begins a sample late only where it must: its first value stands at `from`.
      if (from + i >= 0 && from + i < length) dry[from + i]! += gain * sample;
    });
  }
  const { room, microphone } = place;
  const heard =
    room === null ? dry : convolve(dry, roomResponse(room, sampleRate, seeded(room.seed).fork('speaker')));
  if (microphone.band) limitBand(heard, microphone.band.lowHz, microphone.band.highHz, sampleRate);
  return heard;
}
