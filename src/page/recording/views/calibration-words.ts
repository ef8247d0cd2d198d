import type { CalibrationOutcome } from '../calibration/calibrate-delay.ts';

const ms = (seconds: number) => `${(1000 * seconds).toFixed(1)} ms`;

/** What came of measuring a delay, in words. */
export function calibrationWords(outcome: CalibrationOutcome): {
  readonly good: boolean;
  readonly text: string;
} {
  switch (outcome.state) {
    case 'measured':
      return {
        good: true,
        text: `The click is under way for ${ms(outcome.latency)}, known to ${ms(1.96 * outcome.se)} (${outcome.found} of ${outcome.of} ticks heard). From now on a take to this output says whether you play ahead of the click or behind it.`,
      };
    case 'wireless': {
      const why = {
        name: 'going by its name',
        latency: `going by its long delay of ${outcome.latency === null ? '?' : ms(outcome.latency)}`,
        spread: 'going by its delay, which is never the same twice',
      }[outcome.by];
      return {
        good: false,
        text: `This output is a wireless one, ${why}. Nothing is said of ahead or behind with it; all else is graded as ever. With a wire or the built-in loudspeaker it can be told.`,
      };
    }
    case 'not-heard':
      return {
        good: false,
        text: "The ticks don't reach the microphone. Hold the headphone right against it, or turn the loudspeaker up, and try once more.",
      };
    case 'broken-off':
      return { good: false, text: 'That was broken off: some of the sound was lost. Try once more.' };
  }
}
