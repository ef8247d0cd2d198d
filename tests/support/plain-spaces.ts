/** A shown text as it reads: with plain spaces, and without what only keeps a line from breaking. */
export const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ').replaceAll('\u2060', '');
