import { fromBefore } from '../listening/from-before.ts';
import type { ListeningTake } from '../listening/listening-take.ts';
import { beatAt, type Round, roundSpan } from '../listening/round-span.ts';
import { onMoment } from './on-moment.ts';

/** Soft to begin with. Our judgement. */
const firstVolume = 0.3;

/** Lets the browser's own player play from any moment, and a beat or a line over and over. */
export function listeningBeside(audio: HTMLAudioElement, take: ListeningTake): void {
  const choice = document.querySelector<HTMLSelectElement>('#listen-round');
  let span: { readonly from: number; readonly to: number } | null = null;
  audio.volume = firstVolume;
  const choose = () => {
    const round = (choice?.value ?? 'on') as Round;
    const beat = beatAt(take, audio.currentTime);
    span = round === 'on' || beat === null ? null : roundSpan(take, beat, round);
  };
  const watch = () => {
    if (span !== null && (audio.currentTime >= span.to || audio.currentTime < span.from - 1))
      audio.currentTime = span.from;
    if (!audio.paused) requestAnimationFrame(watch);
  };
  choice?.addEventListener('change', choose);
  audio.addEventListener('play', watch);
  onMoment((time) => {
    audio.currentTime = fromBefore(take, time);
    choose();
    void audio.play();
  });
  const tools = document.getElementById('listening');
  if (tools !== null) tools.hidden = false;
}
