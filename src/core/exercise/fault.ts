/**
 * Something wrong in a text that a person wrote. The sentence for each code stands in `fault-sentences.ts`;
 * `line` and `column` count from 1, the column in characters.
 */
export interface TextFault<Code extends string = string> {
  readonly code: Code;
  readonly line: number;
  readonly column: number;
  readonly facts: Readonly<Record<string, number | string>>;
}
