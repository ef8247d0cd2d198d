import { practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { renderTake } from '../../fixtures/generator/render-take.ts';
import { rooms } from '../../fixtures/generator/rooms.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';

/** A long take with the sheet that was played. */
export interface SpeedTake {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly sheetText: string;
}

export const speedKinds = ['pad', 'snare', 'pad with click'] as const;
/** What players record besides: the room carries on every click. */
export const verdictKinds = [...speedKinds, 'click in a room'] as const;
export type SpeedKind = (typeof verdictKinds)[number];

const bpm = 120;
const beatsInLine = 8;
const click: TakeSpec['click'] = {
  ...{ kind: 'woodblock', levelDb: -20, countInBeats: 4, throughout: true, bellEvery: 4, band: null },
};
const changes: Readonly<Record<SpeedKind, Partial<TakeSpec>>> = {
  pad: {},
  snare: { kind: 'snare' },
  'pad with click': { click },
  'click in a room': { click, room: rooms[3]! },
};

/** A take of at least `seconds`, triplets at 120 BPM with the accent on every partial in turn, cut to that length. */
export function speedTake(kind: SpeedKind, seconds: number): SpeedTake {
  const times = Math.ceil(((seconds / 60) * bpm) / beatsInLine);
  const sheetText = `tempo: ${bpm}\n>RLR >LRL R>LR L>RL RL>R LR>L >R>LR >L>RL ; times: ${times}\n`;
  const { slots } = readSheet(sheetText);
  const spec: TakeSpec = { ...plainTake, player: practisedPlayer, bpm, slots, seed: 3001, ...changes[kind] };
  const { samples, sampleRate } = renderTake(spec);
  return { samples: samples.slice(0, Math.round(seconds * sampleRate)), sampleRate, sheetText };
}
