/** A measure's name, what its figure says, and the same in at most 26 characters for narrow tables. */
export interface MeasureName {
  readonly name: string;
  readonly says: string;
  readonly brief: string;
}

const named = (name: string, says: string, brief: string): MeasureName => ({ name, says, brief });

/** Names shown to people, by measure id. */
export const measureNames: Readonly<Record<string, MeasureName>> = {
  'timing-spread': named(
    'Timing spread',
    'scatter of the strokes round the local tempo',
    'scatter round the beat',
  ),
  'timing-spread-share': named(
    'Timing spread',
    'scatter of the strokes round the local tempo, as a share of one partial',
    'as a share of a partial',
  ),
  placement: named(
    'Partial furthest off',
    'largest distance of a partial from its even place in the beat',
    'from its even place',
  ),
  'placement-share': named(
    'Partial furthest off',
    'largest distance of a partial from its even place, as a share of one partial',
    'as a share of a partial',
  ),
  'accent-bend': named(
    'Bend at the accent',
    'largest shift of the strokes before, on or after an accent',
    'shift before, on or after',
  ),
  'accent-bend-share': named(
    'Bend at the accent',
    'largest shift of the strokes round an accent, as a share of one partial',
    'as a share of a partial',
  ),
  'tempo-error': named(
    'Tempo against asked',
    'mean tempo against the one asked for; plus is faster',
    'plus: faster than asked',
  ),
  'tempo-change': named(
    'Tempo, start to end',
    'change of the tempo from start to end; plus is faster at the end',
    'plus: faster at the end',
  ),
  'hand-offset': named(
    'Left hand after right',
    'how much later the left hand lands; minus means it comes first',
    'minus: left comes first',
  ),
  'hand-offset-share': named(
    'Left hand after right',
    'how much later the left hand lands, as a share of one partial',
    'as a share of a partial',
  ),
  'ioi-evenness': named(
    'Unevenness of intervals',
    'scatter of the intervals from stroke to stroke, as a share of their mean',
    'scatter over mean interval',
  ),
  'accent-to-tap-ratio': named(
    'Accents above taps',
    'how far accents stand out from taps; scored against a band',
    'how far accents stand out',
  ),
  'hand-ratio-gap': named(
    'Right hand over left',
    'how much further accents stand out in the right hand than in the left',
    'in accents above taps',
  ),
  separation: named(
    'Accent beats tap',
    'how often an accent is louder than a tap, over all pairs',
    'of pairs: accent louder',
  ),
  'tap-ceiling': named(
    'Taps too loud',
    'share of taps that come too near the accents',
    'taps too near the accents',
  ),
  'tap-spread': named('Spread of the taps', 'how much taps differ in loudness', 'how much taps differ'),
  'accent-spread': named(
    'Spread of the accents',
    'how much accents differ in loudness',
    'how much accents differ',
  ),
  'stray-strokes': named(
    'Strokes far off',
    'strokes so far off that timing figures leave them out',
    'left out of the timing',
  ),
  missed: named('Missed strokes', 'strokes written, but not heard', 'written, but not heard'),
  extra: named('Extra strokes', 'strokes heard, but not written', 'heard, but not written'),
  doubled: named('Doubled strokes', 'two strokes heard where one is written', 'two heard for one written'),
  'missed-and-extra': named(
    'Missed and extra',
    'missed, extra and doubled strokes together, as a share of those written',
    'together, of those written',
  ),
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

/** Names of measures given as ids with commas between them, each name once, as part of a sentence. */
export function measureList(ids: string): string {
  return [...new Set(ids.split(',').map((id) => measureName(id).toLowerCase()))].join(', ');
}
