import { anyBetween } from '../stats/any-between.ts';
import { changingClick } from './changing-click.ts';
import type { Finding, HeardRecording } from './heard-recording.ts';

/** A single one may be anything. */
const fewest = 2;
/**
 * So long after a click of a metronome, s, it may be the click's: what is played there every time goes into the sound
 * that is learned of the click, and is heard where that is taken off and nobody plays. Sticks count in on the click.
 */
const afterClick = { from: 0.05, to: 0.25 };

/** What is so much softer than a click right before it, dB, is what was left of that. Our judgement. */
const remainsDb = 20;

/** Sticks struck together, as to count in: heard, and left out of the take. */
export function stickClicks(heard: HeardRecording): Finding | null {
  // What sounds like that then is the click.
  if (changingClick(heard) !== null) return null;
  const { sounds, click } = heard.hearing;
  const clicks = sounds.filter(({ sound }) => sound === 'click');
  const louderClicks = (levelDb: number) =>
    clicks.filter((one) => one.levelDb - levelDb > remainsDb).map(({ time }) => time);
  const found = sounds.filter(
    ({ sound, time, levelDb }) =>
      sound === 'stick-click' &&
      !anyBetween(click?.times ?? [], time - afterClick.to, time - afterClick.from) &&
      !anyBetween(louderClicks(levelDb), time - afterClick.from, time),
  );
  if (found.length < fewest) return null;
  return { code: 'stick-clicks', facts: { clicks: found.length, at: found[0]!.time }, spoils: [] };
}
