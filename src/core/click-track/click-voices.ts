import type { ClickKind, ClickSound } from './click-plan.ts';

/** One damped sine of a sound. */
interface Partial {
  readonly hz: number;
  /** Share of full scale. */
  readonly level: number;
  /** s until it has fallen to 1/e. */
  readonly decay: number;
}

export type Voice = readonly Partial[];

/** Synthesised for this; pitches and lengths our judgement: short, apart from a pad's thump, each kind told by ear. */
const sounds: Readonly<Record<ClickSound, Voice>> = {
  wood: [
    { hz: 1150, level: 0.5, decay: 0.011 },
    { hz: 2330, level: 0.2, decay: 0.005 },
  ],
  tick: [{ hz: 2600, level: 0.6, decay: 0.0025 }],
  beep: [{ hz: 880, level: 0.4, decay: 0.022 }],
};

/** A struck bell's partials stand in no whole ratios. */
const bell: Voice = [
  { hz: 1318, level: 0.3, decay: 0.09 },
  { hz: 3634, level: 0.14, decay: 0.05 },
  { hz: 7110, level: 0.06, decay: 0.02 },
];

/** Pitch and level of each kind beside a beat's. */
const kinds: Readonly<Record<ClickKind, { readonly pitch: number; readonly gain: number }>> = {
  bar: { pitch: 1.5, gain: 1 },
  beat: { pitch: 1, gain: 0.8 },
  subdivision: { pitch: 1, gain: 0.3 },
  'count-in': { pitch: 1.25, gain: 0.9 },
};

/** The sound of a click of one kind. */
export function clickVoice(sound: ClickSound, kind: ClickKind, withBell: boolean): Voice {
  const { pitch, gain } = kinds[kind];
  const own = sounds[sound].map(({ hz, level, decay }) => ({ hz: hz * pitch, level: level * gain, decay }));
  return withBell && kind === 'bar' ? [...own, ...bell] : own;
}
