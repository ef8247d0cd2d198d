import { pageAudio } from '../practise/page-audio.ts';
import { type Microphone, type OpenedMicrophone, openMicrophone } from './open-microphone.ts';
import { restoreOutput } from './output-device.ts';

/**
 * The page's one microphone. It stays open while a view uses it, and a little longer: a delay that was measured holds
 * best for the opening in which it was measured.
 */
let microphone: Microphone | null = null;
let users = 0;
let closing: ReturnType<typeof setTimeout> | undefined;
const lingerMs = 60_000;

const isLive = (one: Microphone | null): one is Microphone => one !== null && one.track.readyState === 'live';

/** The microphone if it is open. */
export const openedMicrophone = (): Microphone | null => (isLive(microphone) ? microphone : null);

/** Opens it, or gives the one that is open; another device takes its place. Call it from a press of a button. */
export async function sharedMicrophone(deviceId?: string): Promise<OpenedMicrophone> {
  const context = await pageAudio();
  const open = openedMicrophone();
  if (open !== null && (deviceId === undefined || open.deviceId === deviceId))
    return { state: 'open', microphone: open };
  const opened = await openMicrophone({ deviceId, context });
  if (opened.state === 'fault') return opened;
  open?.close();
  ({ microphone } = opened);
  await restoreOutput(context);
  return opened;
}

/** Says that a view uses the microphone; the function that comes back says that it no longer does. */
export function useOfMicrophone(): () => void {
  users += 1;
  clearTimeout(closing);
  return () => {
    users -= 1;
    if (users === 0)
      closing = setTimeout(() => {
        microphone?.close();
        microphone = null;
      }, lingerMs);
  };
}
