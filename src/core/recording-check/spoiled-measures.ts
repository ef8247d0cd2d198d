/** Figures that rest on how loud accents are, alone or against something else. */
export const accentLevels: readonly string[] = [
  'accent-to-tap-ratio',
  'tap-ceiling',
  'accent-spread',
  'accent-match',
  'second-accent',
  'hand-level',
  'ratio-trend',
  'hand-ratio-gap',
  'model-level',
];

/** Figures that rest on how loud taps are. */
export const tapLevels: readonly string[] = [
  'accent-to-tap-ratio',
  'tap-ceiling',
  'tap-spread',
  'after-accent-leak',
  'before-accent-lift',
  'rebound-decay',
  'hand-level',
  'tap-level-trend',
  'ratio-trend',
  'hand-ratio-gap',
  'model-level',
];

/** Figures that say of single strokes whether they were accents. */
export const accentsHeard: readonly string[] = [
  'separation',
  'lost-accents',
  'added-accents',
  'moved-accents',
  'turned-accents',
];

export const allLevels: readonly string[] = [...new Set([...accentLevels, ...tapLevels, ...accentsHeard])];

/** Figures that count strokes. */
export const strokeCounts: readonly string[] = [
  'missed',
  'extra',
  'doubled',
  'missed-and-extra',
  'grace-notes',
  'stray-strokes',
];

/** Figures that rest on when strokes came. */
export const strokeTimes: readonly string[] = [
  'timing-spread',
  'timing-spread-share',
  'ioi-evenness',
  'placement',
  'placement-share',
  'accent-bend',
  'accent-bend-share',
  'hand-offset',
  'hand-offset-share',
  'hand-change-gap',
  'offset',
  'wander',
  'silent-wander',
  'clock-spread',
  'motor-spread',
  'tempo-error',
  'tempo-change',
  'timing-spread-trend',
  'model-placement',
  'npvi',
  'lag-one',
];
