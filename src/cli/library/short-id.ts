const idSigns = 8;

/** The first signs of a take's id, by which commands know it. */
export const shortId = (id: string): string => id.slice(0, idSigns);
