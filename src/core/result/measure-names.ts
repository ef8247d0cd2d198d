/** A measure's name, what its figure says, and the same in at most 26 characters for narrow tables. */
interface MeasureName {
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
  'hand-change-gap': named(
    'Gap at change of hands',
    'how much longer the interval is when the other hand takes over',
    'plus: longer than within',
  ),
  offset: named(
    'Against the click',
    'how far behind the click the strokes lie; minus means ahead of it',
    'minus: ahead of the click',
  ),
  wander: named('Slow wander', 'slow swaying round the steady tempo', 'slow swaying of the pulse'),
  'silent-wander': named(
    'Wander per silent beat',
    'how much later each beat comes than the one before while the click is silent; minus means sooner',
    'plus: later and later',
  ),
  'clock-spread': named(
    'Scatter of inner beat',
    'without a click: how much the interval kept in mind varies',
    'of the interval in mind',
  ),
  'motor-spread': named(
    'Scatter of the movement',
    'without a click: how far single strokes miss the moment meant for them',
    'made up for by the next',
  ),
  'timing-spread-trend': named(
    'Timing, start to end',
    'how much wider strokes scatter at the end than at the start',
    'plus: looser at the end',
  ),
  'tap-level-trend': named(
    'Taps, start to end',
    'how much louder taps are at the end than at the start',
    'plus: louder at the end',
  ),
  'ratio-trend': named(
    'Ratio, start to end',
    'how much further accents stand out at the end than at the start',
    'minus: flatter at the end',
  ),
  'accent-match': named(
    'Accent furthest off',
    'largest distance of the accents of one partial and hand from the others',
    'from all other accents',
  ),
  'second-accent': named(
    'Second accent of two',
    'how much louder the second of two accents in a beat is than the first',
    'plus: louder than first',
  ),
  'after-accent-leak': named(
    'Taps after accents',
    'how much louder taps right after an accent are than other taps',
    'plus: louder than others',
  ),
  'before-accent-lift': named(
    'Taps before accents',
    'how much louder taps right before an accent are than other taps',
    'plus: louder than others',
  ),
  'rebound-decay': named(
    'Taps in a row',
    'change of level from tap to tap when one hand plays several in a row',
    'minus: each one softer',
  ),
  'hand-level': named('Left over right, level', 'as recorded; never scored', 'as recorded, not scored'),
  'lost-accents': named('Lost accents', 'accents that sounded like taps', 'sounded like taps'),
  'added-accents': named('Added accents', 'taps that sounded like accents', 'taps heard as accents'),
  'moved-accents': named(
    'Moved accents',
    'accents that sounded one stroke early or late',
    'one stroke early or late',
  ),
  'turned-accents': named(
    'Accents turned round',
    'share of the take whose accents lie on another partial than written',
    'of the take, off its place',
  ),
  'grace-notes': named('Grace notes heard', 'of the grace notes written', 'of those written'),
  npvi: named("Neighbours' contrast", 'nPVI of the intervals, %', 'nPVI, for papers'),
  'lag-one': named(
    "Neighbours' correlation",
    'correlation of an interval with the next',
    'lag one, for papers',
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
