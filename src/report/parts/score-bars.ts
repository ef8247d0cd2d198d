import { escapeHtml } from '../escape-html.ts';

/** A score as a bar: null where there was too little to tell; `words` say it to who can't see it. */
interface ScoreBar {
  readonly score: number | null;
  readonly weak: boolean;
  readonly words: string;
}

const [barWidth, barHeight] = [12, 28];

/**
 * Scores as a row of bars, so many px from one to the next: the taller, the better; a weak one hollow with a cross over it.
 *
 * @example scoreBars([{ score: 50, weak: true, words: 'at 80: 50 of 100' }], 18) // '<svg class="repeats" …'
 */
export function scoreBars(bars: readonly ScoreBar[], step: number): string {
  const drawn = bars.map(({ score, weak }, i) => {
    const x = 2 + i * step;
    const height = Math.max(3, ((score ?? 0) / 100) * barHeight);
    const y = 12 + barHeight - height;
    const middle = x + barWidth / 2;
    const cross = weak ? `<path d="M${middle - 3} ${y - 9}l6 6m0 -6l-6 6" class="cross"/>` : '';
    const look = score === null ? 'open' : weak ? 'weak' : 'held';
    return `<rect x="${x}" y="${y}" width="${barWidth}" height="${height}" class="${look}"/>${cross}`;
  });
  const words = escapeHtml(bars.map((bar) => bar.words).join('; '));
  const width = bars.length * step + 2;
  return `<svg class="repeats" role="img" aria-label="${words}" viewBox="0 0 ${width} 42" width="${width}" height="42">${drawn.join('')}</svg>`;
}
