import type { OutputFault } from './write-atomically.ts';

/**
 * One sentence on why a file can't be written and one on what to do about it.
 *
 * @example
 * outputFaultSentence('report.html', { code: 'output-is-a-folder', facts: {} });
 * // '"report.html" is a folder. Choose another name for the file.'
 */
export function outputFaultSentence(path: string, fault: OutputFault): string {
  switch (fault.code) {
    case 'folder-missing':
      return `There is no folder "${fault.facts.folder}" for "${path}". Make the folder first or choose another.`;
    case 'not-a-folder':
      return `"${fault.facts.folder}" is a file, so "${path}" can't stand in it. Choose a folder.`;
    case 'folder-not-writable':
      return `This user may not write into "${fault.facts.folder}". Choose a folder of your own for "${path}".`;
    case 'output-is-a-folder':
      return `"${path}" is a folder. Choose another name for the file.`;
    case 'write-failed':
      return `"${path}" could not be written: ${fault.facts.reason}. Choose another folder or make room on the disk.`;
  }
}
