import { rounded } from '../../../core/result/figures.ts';
import type { RoomNoise } from '../meter/judge-room.ts';
import type { MicrophoneSettings } from '../open-microphone.ts';

/** What a place's noise means for a take. */
export function roomWords({ verdict, noiseDb }: RoomNoise): string {
  switch (verdict) {
    case 'quiet':
      return `Quiet enough: the noise lies at ${rounded(noiseDb, 0)} dB.`;
    case 'noisy':
      return `Loud here: the noise lies at ${rounded(noiseDb, 0)} dB, and soft taps may drown in it. Close the window, switch off what hums, or move the microphone nearer to the pad.`;
    case 'silent':
      return 'Nothing at all comes from the microphone. Is it muted? If not, it cuts off quiet sounds: check it below.';
    case 'too-short':
      return 'That was too short to tell. Listen again.';
  }
}

/** What the browser says it leaves on, in a sentence; null where it says that everything is off. */
export function processingWords(settings: MicrophoneSettings): string | null {
  const on = [
    settings.echoCancellation === true ? 'echo cancelling' : null,
    settings.noiseSuppression === true ? 'noise suppression' : null,
    settings.autoGainControl === true ? 'automatic gain' : null,
  ].filter((word) => word !== null);
  if (on.length === 0) return null;
  return `The browser keeps ${on.join(' and ')} on for this microphone, which changes how loud strokes are. The check below shows how much.`;
}
