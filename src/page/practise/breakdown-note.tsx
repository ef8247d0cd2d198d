import { useEffect, useState } from 'preact/hooks';
import type { Breakdown } from '../../core/click-track/breakdown/follow-course.ts';

interface Props {
  readonly why: Breakdown['why'];
  readonly bpm: number;
  /** Ends the take; called by itself after a few seconds. */
  readonly stop: () => void;
  readonly goOn: () => void;
}

/** s in which a player may still say no. */
const grace = 5;

/** Says that a take broke down, and ends it unless the player wants to go on. */
export function BreakdownNote({ why, bpm, stop, goOn }: Props) {
  const [left, setLeft] = useState(grace);
  useEffect(() => {
    if (left <= 0) return stop();
    const timer = setTimeout(() => setLeft(left - 1), 1000);
    return () => clearTimeout(timer);
  }, [left]);
  return (
    <div class="broke">
      <p class="strong" role="alert">
        {words(why, bpm)}
      </p>
      <p>{left > 0 ? `The take ends in ${left} …` : 'The take ends.'}</p>
      <button type="button" onClick={goOn}>
        Go on playing
      </button>
    </div>
  );
}

/** Said while a take is played whose notes the click covers. */
export function CoveredNote() {
  return (
    <p class="covered" role="status">
      The microphone hears the click on top of most of your notes, so the page can't tell where it breaks:
      press Stop when the beat gets away from you. With the click in headphones it could.
    </p>
  );
}

function words(why: Breakdown['why'], bpm: number): string {
  if (why === 'stopped') return `You stopped at ${bpm}.`;
  return why === 'missing' ? `Many strokes were missing at ${bpm}.` : `The beat got away from you at ${bpm}.`;
}
