const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
let writing = 0;

/** Ends the program as the signal would have ended it. Whoever else listens for the signal has heard of it already. */
function end(signal: NodeJS.Signals): void {
  stopWaiting();
  if (process.listenerCount(signal) === 0) process.kill(process.pid, signal);
}

function stopWaiting(): void {
  for (const signal of signals) process.off(signal, end);
}

/**
 * Waits until signals that have come are told. The event loop looks for them between two turns of immediate work, and
 * the first turn of all may come before it has looked.
 */
export function signalsTold(): Promise<void> {
  return new Promise((resolve) => setImmediate(() => setImmediate(() => setImmediate(resolve))));
}

/**
 * Does a short piece of work, such as writing a file, to its end before Ctrl-C or another signal that comes meanwhile
 * ends the program; whoever works on without a pause awaits `signalsTold` first. While nothing is written signals end
 * the program at once, however busy it is.
 *
 * @example wholeBeforeSignal(() => writeFileSync('result.json', '{}'))
 */
export function wholeBeforeSignal<T>(work: () => T): T {
  if (writing++ === 0) for (const signal of signals) process.on(signal, end);
  try {
    return work();
  } finally {
    void signalsTold().then(() => {
      if (--writing === 0) stopWaiting();
    });
  }
}
