import { counted } from '../../core/result/figures.ts';
/** Something that isn't as it should be in a library. */
export type LibraryFinding =
  | { readonly code: 'tables-damaged' | 'rows-unconnected'; readonly facts: { readonly reason: string } }
  | {
      readonly code: 'recording-missing' | 'recording-damaged';
      readonly facts: { readonly hash: string; readonly name: string; readonly takes: number };
    }
  | { readonly code: 'recordings-unused'; readonly facts: { readonly count: number } }
  | {
      readonly code: 'result-unreadable' | 'result-is-newer' | 'sheet-unreadable';
      readonly facts: { readonly take: string; readonly reason: string };
    };

const printable = (text: string): string =>
  [...text.replaceAll(/[\p{Cc}\p{Cf}]/gu, '?')].slice(0, 120).join('');

/**
 * A finding in a sentence, and what to do about it.
 *
 * @example libraryFindingSentence({ code: 'recordings-unused', facts: { count: 1 } }) // '1 recording is …'
 */
export function libraryFindingSentence({ code, facts }: LibraryFinding): string {
  switch (code) {
    case 'tables-damaged':
      return `The tables are damaged (${printable(facts.reason)}). Keep a copy of the folder, then restore a backup: evenhand library restore.`;
    case 'rows-unconnected':
      return `A row names another that isn't there (${printable(facts.reason)}). Keep a copy of the folder, then restore a backup: evenhand library restore.`;
    case 'recording-missing':
    case 'recording-damaged': {
      const of = `The recording "${printable(facts.name)}" of ${counted(facts.takes, 'take')}`;
      const what =
        code === 'recording-missing' ? 'is missing' : 'is damaged: its bytes are not those it was kept with';
      return `${of} ${what}. Bring it back from a backup: evenhand library check --from BACKUP.`;
    }
    case 'recordings-unused':
      return `${facts.count} recording${facts.count === 1 ? ' is' : 's are'} used by no take, as a crash may leave ${facts.count === 1 ? 'it' : 'them'}. That does no harm; --clear-unused deletes ${facts.count === 1 ? 'it' : 'them'}.`;
    case 'result-unreadable':
      return `The result of take ${facts.take} can't be read (${printable(facts.reason)}). Grade it again from its recording: evenhand takes regrade ${facts.take}.`;
    case 'result-is-newer':
      return `The result of take ${facts.take} was made by a newer version of the program. Get the newer version to see it.`;
    case 'sheet-unreadable':
      return `The sheet of take ${facts.take} can't be read (${printable(facts.reason)}), so it can be seen, but not graded again.`;
  }
}
