import { readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { clearLeftovers } from '../../../src/cli/folder/report-folder.ts';
import { temporaryFolder } from '../../formats/temporary-folder.ts';

it('clears away what a killed writer left long ago, and nothing else', () => {
  const folder = temporaryFolder();
  const [old, young] = [
    '.0b8f3f0e-6a5e-4a0e-9d7e-1c5b9a2f4d10.tmp',
    '.1b8f3f0e-6a5e-4a0e-9d7e-1c5b9a2f4d10.tmp',
  ];
  for (const name of [old!, young!, '.mine.tmp', 'a.html']) {
    writeFileSync(join(folder, name), '');
    if (name !== young) utimesSync(join(folder, name), 1000, 1000);
  }
  clearLeftovers([folder, join(folder, 'missing')], Date.now());
  expect(readdirSync(folder).sort()).toEqual([young, '.mine.tmp', 'a.html'].sort());
});
