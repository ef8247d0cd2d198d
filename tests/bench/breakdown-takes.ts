import { type Player, practisedPlayer } from '../../fixtures/generator/player.ts';
import { type Random, seeded } from '../../fixtures/generator/random.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import type { Room } from '../../fixtures/generator/room.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import type { KindName } from '../../fixtures/generator/stroke-kinds.ts';
import { plainTake } from '../../fixtures/generator/take-spec.ts';
import { plainClick } from '../../src/core/click-track/click-plan.ts';
import { planClicks } from '../../src/core/click-track/plan-clicks.ts';
import { renderClicks } from '../../src/core/click-track/render-clicks.ts';
import { layOut } from '../../src/core/exercise/lay-out.ts';
import { lineFromText } from '../../src/core/exercise/line-from-text.ts';
import { risingSheet } from '../../src/core/exercise/rising-sheet.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';

/** What happens to a player from the line `from` on. */
export type Fall =
  | { readonly kind: 'none' }
  /** Strokes scatter round their places by this share of a step. */
  | { readonly kind: 'scatter'; readonly share: number }
  /** Plays on at a tempo so much slower than the click. */
  | { readonly kind: 'lags'; readonly share: number }
  /** Leaves out this share of the strokes. */
  | { readonly kind: 'drops'; readonly share: number }
  | { readonly kind: 'stops' };

export interface RisingPlayer {
  /** Scatter as a share of a step at every tempo, and the share of strokes missed. */
  readonly scatter: number;
  readonly missed: number;
  /** Chance that a line has a beat left out. */
  readonly stumbles: number;
  readonly fall: Fall;
  readonly from: number;
}

export interface Surroundings {
  readonly kind: KindName;
  readonly contrastDb: number;
  readonly room: Room | null;
  readonly noiseDb: number;
  /** Peak of the click in the microphone, dBFS, or null where it isn't heard. */
  readonly clickDb: number | null;
  /** s from the page's clock to the microphone's. */
  readonly delay: number;
}

const notations = ['>RLR >LRL', '>RLR L>RL RL>R LRL', '>RR>L RRL', '>RLRL RLRL', '>RLR >LRL >RL RL'];

/** A sheet whose tempo rises: four beats twice or four times, from 70 to 110 on, by 5 to 12. */
export function risingTake(random: Random): Sheet {
  const parsed = lineFromText(random.pick(notations), { repeats: 2 });
  if (!parsed.ok) throw new Error('no line');
  const repeats = random.pick([8, 16]) / parsed.line.beats.length;
  const from = Math.round(random.between(70, 110));
  const step = Math.round(random.between(5, 12));
  return risingSheet({ ...parsed.line, repeats }, { from, to: from + 9 * step, step });
}

export function surroundings(random: Random): Surroundings {
  return {
    kind: random.pick([
      'rubber-pad',
      'rubber-pad',
      'soft-pad',
      'laminate-pad',
      'pillow',
      'mesh',
      'snare',
    ] as const),
    contrastDb: random.between(8, 24),
    room: random.chance(0.5) ? random.pick(rooms) : null,
    noiseDb: random.between(-75, -50),
    clickDb: random.chance(0.5) ? random.between(-30, -10) : null,
    delay: random.chance(0.3) ? random.between(0.12, 0.35) : random.between(0, 0.08),
  };
}

/**
 * Plays a rising sheet: the slots that are played, at the time at which they are. Every line begins late by what the
 * player still has of the old tempo, and that is caught up within a few beats.
 */
export function playRisingSheet(sheet: Sheet, player: RisingPlayer, random: Random) {
  let line = -1;
  let late = 0;
  let leftOut = -1;
  return layOut(sheet).flatMap((slot) => {
    const { bpm, repeats, beats } = sheet.lines[slot.line]!;
    const beatSeconds = 60 / bpm!;
    const step = beatSeconds / Math.max(...beats.map(({ partials }) => partials.length));
    const beat = slot.repeat * beats.length + slot.beat;
    if (slot.line !== line) {
      line = slot.line;
      late = line === 0 ? 0 : random.between(0, 0.3) * step;
      leftOut = random.chance(player.stumbles) ? Math.floor(random.between(0, repeats * beats.length)) : -1;
    }
    const fallen = slot.line >= player.from ? player.fall : ({ kind: 'none' } as const);
    const scatter = fallen.kind === 'scatter' ? fallen.share : player.scatter;
    const missed = fallen.kind === 'drops' ? fallen.share : player.missed;
    const lag = fallen.kind === 'lags' ? fallen.share * (beat + slot.position - slot.beat) * beatSeconds : 0;
    const time = slot.time! + lag + late * Math.exp(-beat / 1.5) + random.normal(0, scatter * step);
    const dropped = random.chance(missed) || beat === leftOut || fallen.kind === 'stops';
    return dropped ? [] : [{ ...slot, time }];
  });
}

/** A practised player's levels; the scatter of his times is in those of the slots. */
export const playedAsTimed = (accentDb: number, contrastDb: number): Player => ({
  ...practisedPlayer,
  timekeeping: { kind: 'independent', jitterMs: 0 },
  accentDb,
  tapDb: accentDb - contrastDb,
});

export interface RisingRecording {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** s of the recording at which the click track begins on the page's clock. */
  readonly trackAt: number;
}

/** The recording of it, with the click where the microphone hears that. */
export function recordRising(
  sheet: Sheet,
  player: RisingPlayer,
  { kind, contrastDb, room, noiseDb, clickDb, delay }: Surroundings,
  seed: string,
): RisingRecording {
  const random = seeded(seed);
  const slots = playRisingSheet(sheet, player, random.fork('play'));
  const plan = planClicks(sheet, plainClick);
  const sampleRate = 24000;
  const rest = player.fall.kind === 'stops' ? 12 : 3;
  const { samples, truth } = renderTake({
    ...plainTake,
    seed: Math.floor(random.uniform() * 1e9),
    sampleRate,
    slots: slots.sort((a, b) => a.time - b.time),
    bpm: sheet.lines[0]!.bpm!,
    kind,
    room,
    noise: { colour: 'pink', levelDb: noiseDb },
    player: playedAsTimed(-8, contrastDb),
    leadSeconds: plan.firstBeat + 0.5 + delay,
    tailSeconds: rest,
  });
  const first = truth.strokes[0]!.time - slots[0]!.time;
  const trackAt = first - plan.firstBeat - delay;
  if (clickDb !== null) {
    const clicks = renderClicks(plan, sampleRate);
    const gain = 10 ** (clickDb / 20) / clicks.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
    const at = Math.round((trackAt + delay) * sampleRate);
    for (let i = 0; i < clicks.length && at + i < samples.length; i++)
      if (at + i >= 0) samples[at + i]! += gain * clicks[i]!;
  }
  return { samples, sampleRate, trackAt };
}
