import { useEffect, useRef, useState } from 'preact/hooks';
import type { HandName } from '../set-up/hands-of-reference.ts';

/** Listening to one hand after the other, each until it is stopped. */
export function useHandTask(
  work: (hand: HandName, stop: AbortSignal) => Promise<void>,
  sounding: (now: boolean) => void,
) {
  const [running, setRunning] = useState<HandName | null>(null);
  const stopper = useRef<AbortController | null>(null);
  const stop = () => stopper.current?.abort();
  useEffect(() => stop, []);
  const start = async (hand: HandName) => {
    stopper.current = new AbortController();
    setRunning(hand);
    sounding(true);
    await work(hand, stopper.current.signal);
    setRunning(null);
    sounding(false);
  };
  return { running, start: (hand: HandName) => void start(hand), stop };
}
