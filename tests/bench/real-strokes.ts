import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { practisedPlayer } from '../../fixtures/generator/player.ts';
import { readSheet } from '../../fixtures/generator/read-sheet.ts';
import { type OneShot, strokesFrom } from '../../fixtures/generator/recorded-strokes.ts';
import { type StrokeRequest, type StrokeSound, toLevel } from '../../fixtures/generator/stroke-sound.ts';
import { plainTake, type TakeSpec } from '../../fixtures/generator/take-spec.ts';
import { outsideFolder } from '../outside.ts';
import { readOneShot } from './one-shot-file.ts';

/** Recorded strokes of one instrument: files of a soft and of a hard layer, several where strokes were repeated. */
export interface RealKind {
  readonly name: string;
  readonly from: 'kits' | 'outside';
  readonly soft: readonly string[];
  readonly hard: readonly string[];
}

const numbered = (folder: string, stem: string, [soft, hard]: readonly [string, string], end: string) => ({
  soft: [`${folder}/${stem}${soft}.${end}`],
  hard: [`${folder}/${stem}${hard}.${end}`],
});
const pearl = 'The Black Pearl 1.0';
const hand = 'Gimme A Hand 1.0';
const kit = (name: string, layers: Pick<RealKind, 'soft' | 'hard'>): RealKind => ({
  name,
  from: 'kits',
  ...layers,
});
const repeats = (stem: string, count: number) =>
  Array.from({ length: count }, (_, i) => `strokes_body_percussion/${stem}_rr${i + 1}.flac`);

/** From Debian's hydrogen-drumkits, and body percussion (sfzinstruments, CC0). */
export const realKinds: readonly RealKind[] = [
  kit('jazz snare', numbered('Millo_MultiLayered2', 'jsnare_', ['02', '05'], 'flac')),
  kit('rock snare', numbered('Millo_MultiLayered2', 'rsnare_', ['02', '05'], 'flac')),
  kit('rim', numbered('Millo_MultiLayered2', 'rim_', ['01', '04'], 'flac')),
  kit('snare, eight layers', numbered('Millo_MultiLayered3', 'sd_', ['02', '08'], 'flac')),
  kit('bright snare', numbered(pearl, 'PearlSnare-', ['Softest', 'Hard'], 'wav')),
  kit('rimshot', numbered(pearl, 'PearlSnareRimshot-', ['Soft', 'Hardest'], 'wav')),
  kit('side stick', numbered(pearl, 'PearlSideStick-', ['Soft', 'Hardest'], 'wav')),
  kit('ringing snare', numbered('ForzeeStereo', 'Snare-', ['1', '4'], 'wav')),
  kit('wires off', numbered('ForzeeStereo', 'SnareOff-', ['1', '4'], 'wav')),
  kit('rim click', numbered('ForzeeStereo', 'RimClick-', ['1', '4'], 'wav')),
  kit('old snare', numbered('BJA_Pacific', 'SN_', ['02', '08'], 'aiff')),
  kit('dry snare', numbered('BJA_Pacific', 'SN4_', ['02', '08'], 'aiff')),
  kit('wood block', numbered(hand, 'WoodBlock-', ['Soft', 'Hardest'], 'wav')),
  kit('bongo', numbered(hand, 'BongoHi-', ['Soft', 'Hardest'], 'wav')),
  kit('cajon slap', numbered(hand, 'CajonSlaps-', ['Soft', 'Hardest'], 'wav')),
  kit('cajon thump', numbered(hand, 'CajonThumps-', ['Soft', 'Hardest'], 'wav')),
  kit('clave', numbered(hand, 'Clave-', ['Soft', 'Hardest'], 'wav')),
  kit('ringing rimshot', numbered('ForzeeStereo', 'SnareRim-', ['1', '4'], 'wav')),
  kit('rimshot, wires off', numbered('ForzeeStereo', 'SnareOffRim-', ['1', '4'], 'wav')),
  kit('cross stick', numbered('Millo_MultiLayered3', 'rs_', ['01', '03'], 'flac')),
  kit('small tom', numbered(pearl, 'PearlTom1-', ['Soft', 'Hardest'], 'wav')),
  {
    name: 'belly',
    from: 'outside',
    soft: repeats('bellycenter_l_vl1', 4),
    hard: repeats('bellycenter_l_vl2', 4),
  },
  {
    name: 'finger clap',
    from: 'outside',
    soft: repeats('fingerclap_vl1', 4),
    hard: repeats('fingerclap_vl2', 6),
  },
];

/** Kinds that no constant was ever set by and no fault looked at; see to it that this stays true. */
export const heldOutKinds: readonly RealKind[] = [
  kit('low bongo', numbered(hand, 'BongoLo-', ['Soft', 'Hardest'], 'wav')),
  kit('cowbell', numbered(hand, 'Cowbell-', ['Soft', 'Hardest'], 'wav')),
  kit('finger snap', numbered(hand, 'Fingersnap-', ['Soft', 'Hardest'], 'wav')),
  kit('hand clap', numbered(hand, 'HandClap-', ['Soft', 'Hardest'], 'wav')),
  kit('rack tom', numbered('Millo_MultiLayered2', 'tom_', ['01', '04'], 'flac')),
  kit('floor tom', numbered('Millo_MultiLayered2', 'floortom_', ['01', '04'], 'flac')),
  kit('clap', numbered('Millo_MultiLayered2', 'clap_', ['01', '04'], 'flac')),
  kit('large tom', numbered(pearl, 'PearlTom2-', ['Soft', 'Hardest'], 'wav')),
  kit('low floor tom', numbered(pearl, 'PearlTomFloor-', ['Soft', 'Hardest'], 'wav')),
  kit('sticks', numbered('ForzeeStereo', 'Stick-', ['0', '3'], 'wav')),
  kit('closed hi-hat', numbered('ForzeeStereo', 'HiHatClosed-', ['1', '4'], 'wav')),
];

/** Folder of Debian's package; `EVENHAND_KITS` names another. */
const kitsFolder = () => process.env.EVENHAND_KITS || '/usr/share/hydrogen/data/drumkits';

/** Where a kind's files are, or undefined if one is missing. */
function pathsOf(kind: RealKind): { soft: string[]; hard: string[] } | undefined {
  const folder = kind.from === 'kits' ? kitsFolder() : outsideFolder();
  if (folder === undefined) return undefined;
  const soft = kind.soft.map((file) => join(folder, file));
  const hard = kind.hard.map((file) => join(folder, file));
  return [...soft, ...hard].every((path) => existsSync(path)) ? { soft, hard } : undefined;
}

/** A maker of a kind's strokes for `TakeSpec.kind`, or undefined where its files are missing. */
export function realStrokes(
  ffmpeg: string,
  kind: RealKind,
): ((request: StrokeRequest) => StrokeSound) | undefined {
  const paths = pathsOf(kind);
  if (paths === undefined) return undefined;
  const read = (files: readonly string[]) => files.map((file) => readOneShot(ffmpeg, file));
  return variedStrokes(read(paths.soft), read(paths.hard));
}

/** Strokes from one-shots, another of the repeats each time, the tail dying away faster or slower by chance. */
export function variedStrokes(
  soft: readonly OneShot[],
  hard: readonly OneShot[],
): (request: StrokeRequest) => StrokeSound {
  const makers = soft.flatMap((one) => hard.map((other) => strokesFrom(one, other)));
  return (request) => {
    const maker = request.random.pick(makers);
    const fading = request.random.between(-1, 3);
    const sound = maker(request);
    for (let i = 0; i < sound.samples.length; i++) {
      sound.samples[i]! *= Math.exp((-fading * i) / request.sampleRate);
    }
    return toLevel(sound.samples, sound.first, request.levelDb);
  };
}

const lines = '>RLR >LRL R>LR L>RL RL>R LR>L >R>LR >L>RL ; times: 2';

/** A slow take with taps 14 dB down and a faster one with taps 20 dB down of each kind. */
export const realTakes = [
  { bpm: 96, contrastDb: 14 },
  { bpm: 138, contrastDb: 20 },
] as const;

/** A take of real strokes, the accents peaking at −9 dBFS. */
export function realTake(
  kind: (request: StrokeRequest) => StrokeSound,
  { bpm, contrastDb }: (typeof realTakes)[number],
  seed: number,
): TakeSpec {
  const player = { ...practisedPlayer, accentDb: -9, tapDb: -9 - contrastDb };
  const { slots } = readSheet(`tempo: ${bpm}\n${lines}`);
  return { ...plainTake, player, bpm, slots, seed, kind };
}
