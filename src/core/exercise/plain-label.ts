import { findExercise } from './catalogue.ts';

/**
 * The name of a line to which nobody gave one: the catalogue's for its exercises, otherwise the notation, cut at
 * 60 characters.
 *
 * @example plainLabel('eighth-1-doubles', 'RRLL') // 'Eighths, accent 1, doubles'
 */
export function plainLabel(id: string, notation: string): string {
  return findExercise(id)?.name ?? (notation.length > 60 ? `${notation.slice(0, 59)}…` : notation);
}
