import { planClicks } from '../../core/click-track/plan-clicks.ts';
import { renderClicks } from '../../core/click-track/render-clicks.ts';
import { renderStrokes } from '../../core/click-track/render-strokes.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { type ClickChoice, clickOptions } from './click-choice.ts';
import { pageAudio } from './page-audio.ts';

/** s between the press and the first click: time to schedule it. */
const lead = 0.1;

/** The pad of the example beside the click. */
const padShare = 0.8;

/** Plays a sheet as it should sound, to the click. Gives the function that stops it; `ended` is called at its end. */
export async function hearExercise(sheet: Sheet, click: ClickChoice, ended: () => void): Promise<() => void> {
  const context = await pageAudio();
  const { sampleRate } = context;
  const plan = planClicks(sheet, { ...clickOptions(click), silence: null });
  const clicks = renderClicks(plan, sampleRate);
  const strokes = renderStrokes(sheet, plan.firstBeat, plan.duration, sampleRate);
  const buffer = context.createBuffer(1, Math.max(1, clicks.length), sampleRate);
  buffer.copyToChannel(
    clicks.map((sample, i) => sample + padShare * strokes[i]!),
    0,
  );
  const source = new AudioBufferSourceNode(context, { buffer });
  const gain = new GainNode(context, { gain: click.volume });
  source.connect(gain).connect(context.destination);
  source.onended = () => {
    gain.disconnect();
    ended();
  };
  source.start(context.currentTime + lead);
  return () => source.stop();
}
