import type { ListeningData } from '../parts/listening.ts';
import { listening } from './listening.ts';
import { listeningBeside } from './listening-beside.ts';

/** Makes the listening part of the report work, where the report has one. */
function listen(): void {
  const audio = document.querySelector<HTMLAudioElement>('#sound');
  const text = document.getElementById('listening-data')?.textContent;
  if (audio === null || !text) return;
  const { take, decoding } = JSON.parse(text) as ListeningData;
  if (decoding !== null && 'OfflineAudioContext' in window) listening(audio, take, decoding);
  else listeningBeside(audio, take);
}

listen();
