/** How take files' names end. */
export const takeFileEnding = '.take.zip';

/** A text as part of a file's name that every system takes. */
export function plainWords(text: string): string {
  const plain = text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-');
  return plain.slice(0, 40).replaceAll(/^-+|-+$/g, '');
}
