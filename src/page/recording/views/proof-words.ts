import { rounded } from '../../../core/result/figures.ts';
import type { DeviceProof, LevelDifference } from '../proof/device-proof.ts';

interface ProofWords {
  readonly good: boolean;
  readonly verdict: string;
  readonly more: readonly string[];
}

const interval = ({ value, low, high }: LevelDifference) =>
  `${rounded(value)} dB (between ${rounded(low)} and ${rounded(high)})`;

const otherMicrophone =
  'Look for a setting of the device or the browser that improves voices and switch it off, or use another microphone. A take is graded all the same, with a warning.';

/** What a proof says, in words. */
export function proofWords(proof: DeviceProof): ProofWords {
  const { difference, faint, steady, drift, loudestDb } = proof;
  const measured =
    difference === null
      ? []
      : [`Loud and soft ticks were sent 20 dB apart and came back ${interval(difference)} apart.`];
  switch (proof.verdict) {
    case 'obeyed':
      return {
        good: true,
        verdict: 'It records what is there.',
        more: [
          ...measured,
          faint === null
            ? 'Soft ticks after a silence came through. Fainter ones drowned in the noise here, so nothing is known of those.'
            : 'Soft and faint ticks after a silence came through.',
          ...(steady === null
            ? ["Whether steady sounds are lowered couldn't be heard over the noise here."]
            : []),
          `This holds for sounds up to ${loudestDb === null ? '?' : rounded(loudestDb, 0)} dB on the bar above.${(loudestDb ?? 0) < -15 ? ' To check louder strokes, turn the ticks up and play them once more.' : ''}`,
        ],
      };
    case 'gating':
      return {
        good: false,
        verdict: 'It cuts off soft sounds after a silence.',
        more: [
          faint !== null && faint.high < -2
            ? `Faint ticks came back ${faint.value < -30 ? 'not at all' : `${rounded(-faint.value)} dB too low`}. Soft taps would read as missed strokes.`
            : 'Soft taps would read as missed strokes.',
          otherMicrophone,
        ],
      };
    case 'noise-suppression':
      return {
        good: false,
        verdict: 'It takes soft, steady sound for noise and lowers it.',
        more: [
          ...(steady === null ? [] : [`A steady rustle sank by ${rounded(-steady)} dB while it sounded.`]),
          otherMicrophone,
        ],
      };
    case 'gain-control':
      return {
        good: false,
        verdict: 'It evens out loud and soft.',
        more: [
          ...measured,
          ...(drift !== null && Math.abs(drift) > 2
            ? [`The same tick changed by ${rounded(Math.abs(drift))} dB from the first round to the last.`]
            : []),
          'Accents would seem to stand out less than they do.',
          otherMicrophone,
        ],
      };
    case 'not-heard':
      return {
        good: false,
        verdict: "It couldn't be checked: the ticks don't reach the microphone.",
        more: [
          'With headphones that is how it should be. Pull them out for this check, turn the loudspeaker up, and try once more.',
        ],
      };
    case 'too-soft':
      return {
        good: false,
        verdict: "It couldn't be checked: the ticks come back too faint.",
        more: ['Turn the loudspeaker up, go nearer to it, or find a quieter moment.'],
      };
    case 'too-loud':
      return {
        good: false,
        verdict: "It couldn't be checked: the ticks come back cut off.",
        more: ['Turn the loudspeaker down or move the microphone away from it.'],
      };
  }
}
