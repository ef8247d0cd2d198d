import type { Microphone } from './open-microphone.ts';

export type Interruption =
  | 'microphone-ended'
  | 'interrupted'
  | 'muted'
  | 'unmuted'
  | 'hidden'
  | 'output-changed';

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
  const state = () => {
    if (context.state !== 'running') tell('interrupted');
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
    track.removeEventListener('ended', ended);
    track.removeEventListener('mute', muted);
    track.removeEventListener('unmute', unmuted);
    context.removeEventListener('statechange', state);
    document.removeEventListener('visibilitychange', hidden);
    navigator.mediaDevices.removeEventListener('devicechange', listed);
  };
}
