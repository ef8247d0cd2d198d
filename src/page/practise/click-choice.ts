import {
  type ClickOptions,
  type ClickSound,
  plainClick,
  type SilentBars,
} from '../../core/click-track/click-plan.ts';
import { readKept, writeKept } from '../shell/kept.ts';

/** `holding`: longer and longer as long as the player holds the beat; decided while a take runs. */
type Silence = 'none' | 'steady' | 'growing' | 'holding';

/** How the click sounds, as the player chose it. */
export interface ClickChoice {
  readonly sound: ClickSound;
  readonly subdivisions: number;
  readonly bell: boolean;
  readonly silence: Silence;
  /** 0 … 1. */
  readonly volume: number;
  /** Strokes heard are shown while playing. */
  readonly strokesShown: boolean;
}

/** Soft to begin with; nothing that draws the eye while playing. Our judgement. */
const firstClick: ClickChoice = {
  sound: 'wood',
  subdivisions: 1,
  bell: false,
  silence: 'none',
  volume: 0.3,
  strokesShown: false,
};

export const clickSounds: Readonly<Record<ClickSound, string>> = {
  wood: 'wood block',
  tick: 'tick',
  beep: 'beep',
};

export const silences: Readonly<
  Record<Silence, { readonly words: string; readonly bars: SilentBars | null }>
> = {
  none: { words: 'none', bars: null },
  steady: { words: 'every fourth bar', bars: { heard: 3, lengths: [1] } },
  holding: { words: 'longer while I hold the beat', bars: null },
  growing: { words: 'one bar, then two, then four …', bars: { heard: 2, lengths: [1, 2, 4, 8] } },
};

export const mostSubdivisions = 6;

/** What the planning of a click track needs to know of a choice. */
export const clickOptions = ({ sound, subdivisions, bell, silence }: ClickChoice): ClickOptions => ({
  ...plainClick,
  sound,
  subdivisions,
  bell,
  silence: silences[silence].bars,
});

/** A choice in few words: 'wood block, 3 in a beat, bell on one'. */
export function clickWords({ sound, subdivisions, bell, silence }: ClickChoice): string {
  return [
    clickSounds[sound],
    ...(subdivisions > 1 ? [`${subdivisions} in a beat`] : []),
    ...(bell ? ['bell on one'] : []),
    ...(silence === 'none' ? [] : ['silent bars']),
  ].join(', ');
}

const key = 'click';

export const keptClick = (): ClickChoice => soundClick(readKept(key));
export const keepClick = (click: ClickChoice): void => writeKept(key, click);

/** A choice of whatever was kept: every part that isn't sound is the first one's. */
function soundClick(kept: unknown): ClickChoice {
  const { sound, subdivisions, bell, silence, volume, strokesShown } =
    typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>) : {};
  const flag = (value: unknown, plain: boolean) => (typeof value === 'boolean' ? value : plain);
  const numbered = (value: unknown, least: number, most: number, plain: number) =>
    typeof value === 'number' && value >= least && value <= most ? value : plain;
  return {
    sound: oneOf(clickSounds, sound) ?? firstClick.sound,
    subdivisions: Math.round(numbered(subdivisions, 1, mostSubdivisions, firstClick.subdivisions)),
    bell: flag(bell, firstClick.bell),
    silence: oneOf(silences, silence) ?? firstClick.silence,
    volume: numbered(volume, 0, 1, firstClick.volume),
    strokesShown: flag(strokesShown, firstClick.strokesShown),
  };
}

function oneOf<Key extends string>(table: Readonly<Record<Key, unknown>>, value: unknown): Key | undefined {
  return (Object.keys(table) as Key[]).find((key) => key === value);
}
