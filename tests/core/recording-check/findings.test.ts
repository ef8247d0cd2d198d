import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { recordingChecks } from '../../../src/core/recording-check/check-recording.ts';
import { checkSentences } from '../../../src/core/result/sentences-check.ts';

const folder = join(import.meta.dirname, '../../../src/core/recording-check');
const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
const rows = [...read('findings.md').matchAll(/^\| `([a-z-]+)` \| (.+) \| (.+) \|$/gm)].map(
  ([, code, words, spoils]) => ({ code: code!, words: words!, spoils: spoils! }),
);

/** Codes that the checks can give, in their order, by the files that they are imported from. */
const given = [
  ...read('check-recording.ts')
    .split('recordingChecks: readonly FindingOf[] = [')[1]!
    .split(']')[0]!
    .matchAll(/([a-zA-Z]+),/g),
].map(([, name]) => {
  const file = name!.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  const source = read(`${file}.ts`);
  const codes = new Set([...source.matchAll(/code: '([a-z-]+)'/g)].map(([, code]) => code!));
  expect(codes.size, file).toBe(1);
  return { code: [...codes][0]!, spoilsNothing: /spoils: \[\]/.test(source) };
});

it('every check has its row, in the order in which findings are told', () => {
  expect(given).toHaveLength(recordingChecks.length);
  expect(rows.map(({ code }) => code)).toEqual(given.map(({ code }) => code));
});

it('every finding has a sentence, and there is no sentence without one', () => {
  expect(rows.map(({ code }) => code).toSorted()).toEqual(Object.keys(checkSentences).toSorted());
});

it('a row says of no finding that it spoils nothing unless that is so', () => {
  for (const [i, { code, spoils }] of rows.entries())
    expect(spoils === 'nothing', code).toBe(given[i]!.spoilsNothing);
});
