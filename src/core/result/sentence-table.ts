export type Facts = Readonly<Record<string, number | string>>;

/** Sentences by code, each filled in with the code's facts. */
export type SentenceTable = Readonly<Record<string, (facts: Facts) => string>>;

/** A fact as a number; NaN shows in the sentence, and a test fails, when it isn't there. */
export const numberOf = (facts: Facts, name: string): number => Number(facts[name] ?? Number.NaN);

export const textOf = (facts: Facts, name: string): string => String(facts[name] ?? `(${name}?)`);
