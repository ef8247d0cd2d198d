import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { build } from 'esbuild';

/** What figures follow from: grading, and reading what is graded. All else is reached from these. */
const gradingParts = [
  'src/core/grade-take.ts',
  'src/core/grade-notes.ts',
  'src/formats/open-sound.ts',
  'src/formats/midi-notes.ts',
];

/** Enough that two builds don't meet by chance. */
const digits = 12;

/**
 * A digest of all that grades, packages included, as it is built without names and comments: it changes with what
 * could change a figure, and not with the page, the report or the commands.
 */
export async function gradingDigest(root: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: gradingParts.map((part) => join(root, part)),
    absWorkingDir: root,
    outdir: join(root, 'dist'),
    bundle: true,
    write: false,
    minify: true,
    legalComments: 'none',
    platform: 'node',
    format: 'esm',
    // Installed by those who want it.
    external: ['@audio/decode-aac'],
    logLevel: 'error',
  });
  const hash = createHash('sha256');
  for (const { contents } of outputFiles) hash.update(contents);
  return hash.digest('hex').slice(0, digits);
}
