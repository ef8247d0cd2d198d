/** A measure's name and, in a few plain words, what its figure says. */
export interface MeasureName {
  readonly name: string;
  readonly says: string;
}

/** Names shown to people, by measure id. */
export const measureNames: Readonly<Record<string, MeasureName>> = {
  'timing-spread': { name: 'Timing spread', says: 'scatter of the strokes round the local tempo' },
  'timing-spread-share': { name: 'Timing spread', says: 'the same as a share of one partial' },
  placement: { name: 'Partial furthest off', says: 'largest distance of a partial from its even place' },
  'placement-share': { name: 'Partial furthest off', says: 'the same as a share of one partial' },
  'accent-bend': { name: 'Bend at the accent', says: 'shift of strokes before, on or after an accent' },
  'accent-bend-share': { name: 'Bend at the accent', says: 'the same as a share of one partial' },
  'tempo-error': { name: 'Tempo against asked', says: 'plus is faster than asked, minus slower' },
  'tempo-change': { name: 'Tempo, start to end', says: 'plus is faster at the end, minus slower' },
  'hand-offset': { name: 'Left hand after right', says: 'minus: the left hand comes first' },
  'hand-offset-share': { name: 'Left hand after right', says: 'the same as a share of one partial' },
  'ioi-evenness': { name: 'Unevenness of intervals', says: 'scatter of the time from stroke to stroke' },
  'accent-to-tap-ratio': {
    name: 'Accents above taps',
    says: 'how far accents stand out; a band is asked for',
  },
  'hand-ratio-gap': { name: 'Right ratio over left', says: 'difference of the hands in that contrast' },
  separation: { name: 'Accent beats tap', says: 'how often an accent is louder than a tap' },
  'tap-ceiling': { name: 'Taps too loud', says: 'share of taps that come too near the accents' },
  'tap-spread': { name: 'Spread of the taps', says: 'how much taps differ in loudness' },
  'accent-spread': { name: 'Spread of the accents', says: 'how much accents differ in loudness' },
  missed: { name: 'Missed strokes', says: 'written, but not heard' },
  extra: { name: 'Extra strokes', says: 'heard, but not written' },
  doubled: { name: 'Doubled strokes', says: 'two heard where one is written' },
  'missed-and-extra': { name: 'Missed and extra', says: 'together, as a share of the strokes written' },
};

/** Names of a rubric's dimensions. */
export const dimensionNames: Readonly<Record<string, string>> = {
  evenness: 'Evenness',
  shape: 'Shape of the beat',
  dynamics: 'Accents and taps',
  hands: 'Hands',
  steadiness: 'Tempo',
  completeness: 'Every stroke there',
};

/** Words for a score's place. */
export const scoreWords = { secure: 'secure', nearly: 'nearly there', 'not-yet': 'not yet' } as const;

const spelledOut = (id: string) => id.charAt(0).toUpperCase() + id.slice(1).replaceAll('-', ' ');

export const measureName = (id: string): string => measureNames[id]?.name ?? spelledOut(id);
export const dimensionName = (id: string): string => dimensionNames[id] ?? spelledOut(id);
