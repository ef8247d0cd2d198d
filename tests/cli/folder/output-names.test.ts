import { expect, it } from 'vitest';
import { outputNames } from '../../../src/cli/folder/output-names.ts';

it('names each report after its recording, each name once', () => {
  expect(outputNames(['a/1.flac', 'a/1.wav', 'A/1.WAV', 'b/1.wav', 'x.y.wav'])).toEqual([
    ...['a/1', 'a/1-wav', 'A/1-WAV-2', 'b/1', 'x.y'],
  ]);
});

it('leaves the name of the page before the reports alone', () => {
  expect(outputNames(['index.wav', 'Index.flac', 'anna/index.wav'])).toEqual([
    ...['index-wav', 'Index-flac', 'anna/index'],
  ]);
});
