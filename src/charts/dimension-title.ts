/** A dimension's name as people read it: its id in words. */
export function dimensionTitle(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
