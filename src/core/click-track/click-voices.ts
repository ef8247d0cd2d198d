import type { ClickKind, ClickSound } from './click-plan.ts';

/** One damped sine of a sound. */
interface Partial {
  readonly hz: number;
  /** Share beside the other partials. */
  readonly level: number;
  /** s until it has fallen to 1/e. */
  readonly decay: number;
}

/** What a click sounds like: its partials, and its peak as a share of full scale. */
export interface Voice {
  readonly partials: readonly Partial[];
  readonly peak: number;
}

/** Synthesised for this; pitches and lengths our judgement: short, apart from a pad's thump, each kind told by ear. */
const sounds: Readonly<Record<ClickSound, readonly Partial[]>> = {
  wood: [
    { hz: 1150, level: 0.7, decay: 0.011 },
    { hz: 2330, level: 0.3, decay: 0.005 },
  ],
  tick: [{ hz: 2600, level: 1, decay: 0.0025 }],
  beep: [{ hz: 880, level: 1, decay: 0.022 }],
};

/** A struck bell's partials stand in no whole ratios; which, our judgement. */
const bell: readonly Partial[] = [
  { hz: 1318, level: 0.6, decay: 0.09 },
  { hz: 3634, level: 0.28, decay: 0.05 },
  { hz: 7110, level: 0.12, decay: 0.02 },
];

/** Pitch beside a beat's, and peak: −2, −4, −13 and −3 dBFS. Our judgement. */
const kinds: Readonly<Record<ClickKind, { readonly pitch: number; readonly peak: number }>> = {
  bar: { pitch: 1.5, peak: 0.8 },
  beat: { pitch: 1, peak: 0.63 },
  subdivision: { pitch: 1, peak: 0.22 },
  'count-in': { pitch: 1.25, peak: 0.7 },
};

/** The sound of a click of one kind. */
export function clickVoice(sound: ClickSound, kind: ClickKind, withBell: boolean): Voice {
  const { pitch, peak } = kinds[kind];
  const own = sounds[sound].map((partial) => ({ ...partial, hz: partial.hz * pitch }));
  return { peak, partials: withBell && kind === 'bar' ? [...own, ...bell] : own };
}
