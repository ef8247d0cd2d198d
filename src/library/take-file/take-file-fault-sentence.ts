import type { TakeFileFault } from './take-file-fault.ts';

const anew = 'Ask for the file again, or export it anew where it came from.';
const printable = (text: string | number | undefined): string =>
  [...String(text).replaceAll(/[\p{Cc}\p{Cf}]/gu, '?')].slice(0, 80).join('');
const megabytes = (bytes: string | number | undefined): string => `${Math.round(Number(bytes) / 1e6)} MB`;

/**
 * What is wrong with a take file, in one sentence, and what to do about it. `facts.take` names the take inside the
 * file, where the others could be read.
 *
 * @example takeFileFaultSentence('lesson.take.zip', { code: 'no-manifest', facts: {} })
 * // '"lesson.take.zip" is a ZIP archive, but no take file: …'
 */
export function takeFileFaultSentence(name: string, { code, facts }: TakeFileFault): string {
  const file = `"${printable(name)}"`;
  const where = facts.take === undefined ? file : `Take ${facts.take} in ${file}`;
  const inside = `"${printable(facts.name)}"`;
  switch (code) {
    case 'not-a-zip':
      return `${file} is not a take file, or its end is missing. ${anew}`;
    case 'archive-too-large':
      return `${file} is too large for a take file (${megabytes(facts.bytes)}; ${megabytes(facts.limit)} at most). Export fewer takes at a time.`;
    case 'archive-damaged':
      return `${file} is damaged: what it says of its contents doesn't add up. ${anew}`;
    case 'too-many-files':
      return `${file} holds ${facts.files} files; a take file holds ${facts.limit} at most. Export fewer takes at a time.`;
    case 'locked':
      return `${file} is locked with a password. Unpack it, pack it again without one, and open that.`;
    case 'packed-unusually':
      return `${file} is packed in a way that can't be read here (method ${facts.method}). ${anew}`;
    case 'unsafe-name':
      return `${file} was not opened: it holds a file named ${inside}, a name that could reach outside of it.`;
    case 'name-twice':
      return `${file} was not opened: it holds two files named ${inside}.`;
    case 'no-manifest':
      return `${file} is a ZIP archive, but no take file: it has no list of takes (manifest.json). Choose a file that ends in .take.zip.`;
    case 'manifest-unreadable':
      return `${file} has a list of takes that can't be read (${printable(facts.reason)}). ${anew}`;
    case 'manifest-newer':
      return `${file} was made by a newer version of the program. Get the newer version to open it.`;
    case 'file-missing':
      return `${where} lacks its file ${inside}. ${anew}`;
    case 'file-too-large':
      return `${where} has a file ${inside} that is too large (${megabytes(facts.bytes)}; ${megabytes(facts.limit)} at most).`;
    case 'file-damaged':
      return `${where} has a damaged file ${inside}. ${anew}`;
    case 'hash-wrong':
      return `${where} has a file ${inside} that isn't the one it was made with: it is damaged or was exchanged. ${anew}`;
    case 'sheet-unreadable':
      return `${where} has a sheet that can't be read (${printable(facts.reason)}). ${anew}`;
    case 'result-unreadable':
      return `${where} has a result that can't be read (${printable(facts.reason)}). ${anew}`;
    case 'result-newer':
      return `${where} was graded by a newer version of the program. Get the newer version to open it.`;
    case 'remarks-unreadable':
      return `${where} has remarks that can't be read (${printable(facts.reason)}). ${anew}`;
  }
}
