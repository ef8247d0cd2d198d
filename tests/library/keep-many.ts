import { keepTake } from '../../src/library/keep-take.ts';
import { openFolderLibrary } from '../../src/library/open-folder-library.ts';
import { madeAudio, madeTake } from './made-take.ts';

/** A program of its own: keeps takes number `from`, `from + 1`, … in a folder's library, and says each when it is kept. */
const [folder = '', from = '0', count = '0'] = process.argv.slice(2);
const library = await openFolderLibrary(folder);
for (let number = Number(from); number < Number(from) + Number(count); number++) {
  const audio = { name: 'a.wav', bytes: madeAudio(number, 300_000) };
  await keepTake(library, madeTake(number, { audio }));
  process.stdout.write(`${number}\n`);
}
await library.close();
