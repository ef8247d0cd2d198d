import type { Microphone } from './open-microphone.ts';

type Interruption = 'microphone-ended' | 'interrupted' | 'muted' | 'unmuted' | 'hidden' | 'output-changed';

/** A change of output stops the sound for a moment, too; a call stops it for longer. Our judgement. */
const patienceMs = 400;

/**
 * Tells of everything that a call, another program or the user does to a recording from outside. The function that comes
 * back ends the watch.
 */
export function watchInterruptions(
  { track, context }: Pick<Microphone, 'track' | 'context'>,
  outputChanged: () => Promise<boolean>,
  tell: (what: Interruption) => void,
): () => void {
  const ended = () => tell('microphone-ended');
  const muted = () => tell('muted');
  const unmuted = () => tell('unmuted');
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const state = () => {
    clearTimeout(waiting);
    if (context.state !== 'running') waiting = setTimeout(() => tell('interrupted'), patienceMs);
  };
  const hidden = () => {
    if (document.visibilityState === 'hidden') tell('hidden');
  };
  const devices = async () => {
    if (await outputChanged()) tell('output-changed');
  };
  const listed = () => void devices();
  track.addEventListener('ended', ended);
  track.addEventListener('mute', muted);
  track.addEventListener('unmute', unmuted);
  context.addEventListener('statechange', state);
  document.addEventListener('visibilitychange', hidden);
  navigator.mediaDevices.addEventListener('devicechange', listed);
  return () => {
    clearTimeout(waiting);
    track.removeEventListener('ended', ended);
    track.removeEventListener('mute', muted);
    track.removeEventListener('unmute', unmuted);
    context.removeEventListener('statechange', state);
    document.removeEventListener('visibilitychange', hidden);
    navigator.mediaDevices.removeEventListener('devicechange', listed);
  };
}
