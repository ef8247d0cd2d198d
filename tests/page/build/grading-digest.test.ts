import { cpSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { gradingDigest } from '../../../src/page/build/grading-digest.ts';
import { repository } from '../../cli/built-program.ts';
import { temporaryFolder } from '../../formats/temporary-folder.ts';

it('the digest of what grades is the same in every folder, and changes with what could change a figure', async () => {
  const folder = temporaryFolder();
  for (const part of ['src/core', 'src/formats', 'src/charts', 'src/report', 'package.json', 'tsconfig.json'])
    cpSync(join(repository, part), join(folder, part), { recursive: true });
  symlinkSync(join(repository, 'node_modules'), join(folder, 'node_modules'));
  const here = await gradingDigest(repository);
  expect(here).toMatch(/^[0-9a-f]{12}$/);
  expect(await gradingDigest(folder)).toBe(here);

  const change = (path: string, to: (text: string) => string) => {
    const file = join(folder, path);
    const text = readFileSync(file, 'utf8');
    expect(to(text)).not.toBe(text);
    writeFileSync(file, to(text));
  };
  // A comment, and a page that shows what was graded.
  change('src/core/grading/take-warnings.ts', (text) => `// Said more plainly.\n${text}`);
  change('src/report/parts/care.ts', (text) => text.replace('Ears.', 'Hearing.'));
  expect(await gradingDigest(folder)).toBe(here);
  change('src/core/grading/take-warnings.ts', (text) => text.replace('farOff = 0.12', 'farOff = 0.13'));
  expect(await gradingDigest(folder)).not.toBe(here);
});
