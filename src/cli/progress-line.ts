import type { WorkTold } from '../core/signal/work-told.ts';

/** What the line is written to: a terminal's width is known, that of a file or a pipe isn't. */
export interface ProgressTarget {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** A line on how far a long piece of work has come. */
export interface ProgressLine {
  readonly tell: WorkTold;
  /** Takes the line away, so that what is written next stands alone. */
  end(): void;
}

const words = { listening: 'Listening', laying: 'Laying strokes on the exercise', measuring: 'Measuring' };
/** Work done sooner than this needs no telling, ms; the line is written again after this long, ms. */
const patienceMs = 1000;
const againMs = 200;
const eraseLine = '\r\u001b[2K';

/**
 * A line that tells on a terminal how far the work has come once it takes longer than a second: `Listening 42 %`. Anywhere
 * else it tells nothing. `nowMs` is a clock.
 *
 * @example
 * const line = progressLine(process.stderr, performance.now.bind(performance));
 * line.tell('listening', 0.42);
 * line.end();
 */
export function progressLine(target: ProgressTarget, nowMs: () => number): ProgressLine {
  if (!target.isTTY) return { tell: () => {}, end: () => {} };
  let next = nowMs() + patienceMs;
  let written = '';
  return {
    tell(phase, share) {
      const now = nowMs();
      if (now < next) return;
      next = now + againMs;
      const text = `${words[phase]} ${Math.round(100 * share)} %`;
      if (text !== written) target.write(`${eraseLine}${text}`);
      written = text;
    },
    end() {
      if (written !== '') target.write(eraseLine);
      written = '';
      next = Number.POSITIVE_INFINITY;
    },
  };
}
