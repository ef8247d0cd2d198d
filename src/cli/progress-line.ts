import type { WorkPhase } from '../core/signal/work-told.ts';

/** What the line is written to: a terminal's width is known, that of a file or a pipe isn't. */
interface ProgressTarget {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** A line on how far a long piece of work has come. */
interface ProgressLine {
  readonly tell: (phase: WorkPhase | 'decoding', share: number) => void;
  /** Takes the line away, so that what is written next stands alone. */
  end(): void;
}

const words = {
  decoding: 'Reading the recording',
  listening: 'Listening',
  laying: 'Laying strokes on the exercise',
  measuring: 'Measuring',
};
/** Work done sooner than this needs no telling, ms; the line is written again after this long, ms. */
const patienceMs = 1000;
const againMs = 200;
const eraseLine = '\r\u001b[2K';

/** A line of a terminal that is written over and over. */
interface StatusLine {
  /** `text` is asked for only when it is time to show it. */
  readonly show: (text: () => string) => void;
  end(): void;
}

/**
 * A line on a terminal that shows the newest text, five times a second at most and not in the first second; nothing
 * anywhere else. `nowMs` is a clock.
 *
 * @example statusLine(process.stderr, performance.now.bind(performance)).show(() => '3 of 12')
 */
export function statusLine(target: ProgressTarget, nowMs: () => number): StatusLine {
  if (!target.isTTY) return { show: () => {}, end: () => {} };
  let next = nowMs() + patienceMs;
  let written = '';
  return {
    show(text) {
      const now = nowMs();
      if (now < next) return;
      next = now + againMs;
      const shown = text();
      if (shown !== written) target.write(`${eraseLine}${shown}`);
      written = shown;
    },
    end() {
      if (written !== '') target.write(eraseLine);
      written = '';
      next = Number.POSITIVE_INFINITY;
    },
  };
}

/**
 * A line that tells on a terminal how far the work has come once it takes longer than a second: `Listening 42 %`.
 * Anywhere else it tells nothing. `nowMs` is a clock.
 *
 * @example
 * const line = progressLine(process.stderr, performance.now.bind(performance));
 * line.tell('listening', 0.42);
 * line.end();
 */
export function progressLine(target: ProgressTarget, nowMs: () => number): ProgressLine {
  const { show, end } = statusLine(target, nowMs);
  return { tell: (phase, share) => show(() => `${words[phase]} ${Math.round(100 * share)} %`), end };
}

/**
 * What opens a recording, its decoding told on the line, which is taken away when it can't be opened.
 *
 * @example const recording = await toldOpening(line, (told) => openTake('take.m4a', told));
 */
export function toldOpening<Opened>(
  { tell, end }: ProgressLine,
  open: (told: (share: number) => void) => Promise<Opened>,
): Promise<Opened> {
  return open((share) => tell('decoding', share)).catch((error: unknown) => {
    end();
    throw error;
  });
}
