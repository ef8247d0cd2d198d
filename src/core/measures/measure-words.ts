/** Where a figure is at its best, and its unit, in words. */
export const bestWords = {
  'near-zero': 'best near zero',
  low: 'the lower the better',
  high: 'the higher the better',
  'within-band': 'best within a band',
} as const;

export const unitWords = {
  ms: 'milliseconds (ms)',
  '%': 'per cent (%)',
  dB: 'decibels (dB)',
  probability: 'pairs in 100',
  correlation: 'a number from −1 to 1',
} as const;
