import { useEffect, useState } from 'preact/hooks';
import type { MicrophoneFault } from '../microphone-fault.ts';
import type { Microphone } from '../open-microphone.ts';
import { openedMicrophone, sharedMicrophone, useOfMicrophone } from '../shared-microphone.ts';

export interface MicrophoneInView {
  readonly microphone: Microphone | null;
  readonly opening: boolean;
  readonly fault: MicrophoneFault | null;
  /** Opens the page's microphone, or another device in its place; from a press of a button. */
  readonly open: (deviceId?: string) => Promise<Microphone | null>;
}

/** The page's microphone in a view; it is let go of when the view goes. */
export function useMicrophone(): MicrophoneInView {
  const [microphone, setMicrophone] = useState<Microphone | null>(openedMicrophone);
  const [opening, setOpening] = useState(false);
  const [fault, setFault] = useState<MicrophoneFault | null>(null);
  useEffect(useOfMicrophone, []);
  useEffect(() => {
    const track = microphone?.track;
    const gone = () => setMicrophone(null);
    track?.addEventListener('ended', gone);
    return () => track?.removeEventListener('ended', gone);
  }, [microphone]);
  const open = async (deviceId?: string) => {
    setOpening(true);
    const opened = await sharedMicrophone(deviceId);
    setOpening(false);
    setFault(opened.state === 'fault' ? opened.fault : null);
    setMicrophone(opened.state === 'open' ? opened.microphone : openedMicrophone());
    return opened.state === 'open' ? opened.microphone : null;
  };
  return { microphone, opening, fault, open };
}
