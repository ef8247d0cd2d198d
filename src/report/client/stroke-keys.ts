import type { ChosenStroke } from './chosen-stroke.ts';

/**
 * The stroke that a key leads to: arrows go to the next and the one before among `strokes`, Home and End to the ends,
 * Escape lets go. Undefined for any other key.
 */
export function strokeAfterKey(
  key: string,
  strokes: readonly number[],
  chosen: number | null,
): number | null | undefined {
  if (key === 'Escape') return null;
  const sorted = [...new Set(strokes)].sort((a, b) => a - b);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  if (key === 'Home') return first;
  if (key === 'End') return last;
  if (key === 'ArrowRight')
    return chosen === null ? first : (sorted.find((stroke) => stroke > chosen) ?? last);
  if (key === 'ArrowLeft')
    return chosen === null ? last : (sorted.findLast((stroke) => stroke < chosen) ?? first);
  return undefined;
}

/** Lets the keys of a picture walk through its strokes. */
export function listenToKeys(
  canvas: HTMLCanvasElement,
  strokes: () => readonly number[],
  chosen: ChosenStroke,
): void {
  canvas.tabIndex = 0;
  canvas.addEventListener('keydown', (event) => {
    const next = strokeAfterKey(event.key, strokes(), chosen.get());
    if (next === undefined) return;
    event.preventDefault();
    chosen.choose(next);
  });
}
