import { useEffect, useRef, useState } from 'preact/hooks';

export interface Task<Outcome> {
  readonly running: boolean;
  /** From 0 to 1. */
  readonly share: number;
  readonly outcome: Outcome | null;
  start(): void;
  stop(): void;
}

/** Something that takes a while, shows how far it is, and stops when it is told to or its view goes. */
export function useTask<Outcome>(
  work: (stop: AbortSignal, progress: (share: number) => void) => Promise<Outcome>,
  sounding: (now: boolean) => void,
): Task<Outcome> {
  const [running, setRunning] = useState(false);
  const [share, setShare] = useState(0);
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const stopper = useRef<AbortController | null>(null);
  const stop = () => stopper.current?.abort();
  useEffect(() => stop, []);
  const start = async () => {
    const own = new AbortController();
    stopper.current = own;
    setRunning(true);
    sounding(true);
    setOutcome(null);
    setShare(0);
    const came = await work(own.signal, setShare);
    setRunning(false);
    sounding(false);
    if (!own.signal.aborted) setOutcome(came);
  };
  return { running, share, outcome, start: () => void start(), stop };
}
