/**
 * The day of a moment as people say it.
 *
 * @example dayWords('2026-03-02T18:30:00Z') // '2 March 2026'
 */
export function dayWords(moment: string): string {
  const date = new Date(moment);
  return Number.isNaN(date.getTime())
    ? 'Some time ago'
    : date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}
