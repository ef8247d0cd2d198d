/** Single-character changes that turn one text into another (Levenshtein's distance). */
export function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}

/**
 * The candidate most like a mistyped text, or '' when none is near: more than a third of the letters and more than
 * two, so that two swapped letters pass, would have to change (our judgement).
 * Only the text's first 60 characters count.
 *
 * @example nearestText('temop', ['tempo', 'times']) // 'tempo'
 */
export function nearestText(text: string, candidates: readonly string[]): string {
  const written = text.slice(0, 60).toLowerCase();
  let nearest = '';
  let least = Math.max(2, Math.floor(written.length / 3)) + 1;
  for (const candidate of candidates) {
    const distance = editDistance(written, candidate);
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}
