import { withArchive } from '../../../src/library/backup/archive-source.ts';
import { backUpLibrary } from '../../../src/library/backup/back-up-library.ts';
import { backupSource } from '../../../src/library/backup/library-source.ts';
import { restoreLibrary } from '../../../src/library/backup/restore-library.ts';
import { opened } from './filled-library.ts';

/** A program of its own: says that it begins, then backs up, restores or imports without end. */
const [work = '', from = '', other = '', to = ''] = process.argv.slice(2);
process.stdout.write('begin\n');
for (let round = 0; ; round++) {
  // Two libraries in turn, so that there is always something to change.
  const source = round % 2 === 0 ? from : other;
  if (work === 'backup') await opened(source, (library) => backUpLibrary(library, to));
  if (work === 'restore') await restoreLibrary(backupSource(source), to, { replace: true });
  if (work === 'import')
    await withArchive(`${source}.tar`, to, (archive) => restoreLibrary(archive, to, { replace: true }));
}
