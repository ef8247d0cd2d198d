import {
  type FolderResult,
  type FolderTake,
  folderResultVersion,
} from '../../report/folder/folder-result.ts';
import { exitCodes } from '../exit-codes.ts';

/** The takes with how many of each kind there are. */
export function folderResultOf(takes: readonly FolderTake[], program: string): FolderResult {
  const count = (state: FolderTake['state']) => takes.filter((take) => take.state === state).length;
  return {
    schema: 'evenhand-folder-result',
    version: folderResultVersion,
    program,
    takes: [...takes],
    counts: {
      graded: count('graded'),
      notGradable: count('not-gradable'),
      unreadable: count('unreadable'),
      failed: count('failed'),
      earlier: takes.filter(({ earlier }) => earlier).length,
    },
  };
}

/** The exit code for a folder: that of the worst that became of a recording in it. */
export function exitCodeOf({ failed, unreadable, notGradable }: FolderResult['counts']): number {
  if (failed > 0) return exitCodes.fault;
  if (unreadable > 0) return exitCodes.unreadableInput;
  return notGradable > 0 ? exitCodes.notGradable : exitCodes.done;
}
