import { expect, it } from 'vitest';
import { folderProgress } from '../../../src/cli/folder/takes-done.ts';

it('shows how far a folder has come', () => {
  expect(folderProgress(0, 12)).toBe(`${'·'.repeat(20)} 0 of 12 takes`);
  expect(folderProgress(3.7, 12)).toBe(`${'■'.repeat(6)}${'·'.repeat(14)} 3 of 12 takes`);
  expect(folderProgress(12, 12)).toBe(`${'■'.repeat(20)} 12 of 12 takes`);
});
