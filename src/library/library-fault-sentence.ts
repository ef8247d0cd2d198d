import type { FaultFacts, LibraryFaultCode } from './library-fault.ts';

/**
 * A library's fault in words, and what to do about it.
 *
 * @example libraryFaultSentence({ code: 'name-empty', facts: {} }) // 'A player needs a name. …'
 */
export function libraryFaultSentence({
  code,
  facts,
}: {
  readonly code: LibraryFaultCode;
  readonly facts: FaultFacts;
}): string {
  switch (code) {
    case 'library-is-newer':
      return 'These takes are kept by a newer version of the program. Nothing was changed; get the newer version to see them.';
    case 'no-sqlite':
      return `Takes can't be kept here, since the package better-sqlite3 can't be loaded (${facts.reason}). Run "npm install better-sqlite3" where Evenhand stands. Grading works without it.`;
    case 'not-a-library':
      return `"${facts.path}" is no library of takes, or it is damaged (${facts.reason}). Choose another folder, or bring back a copy of it.`;
    case 'library-busy':
      return 'Another program is writing to this library just now. Nothing was changed; try again in a moment.';
    case 'no-such-take':
      return 'This take is no longer there: it may have been deleted meanwhile.';
    case 'no-such-person':
      return 'This player is no longer there: the name may have been deleted meanwhile.';
    case 'audio-missing':
      return "This take's recording is missing from the library, so it can be seen but not heard or passed on.";
    case 'audio-damaged':
      return "This take's recording is damaged: its bytes are not those that were kept. The take can be seen, but not heard, passed on or graded again; bring the recording back from a backup (`evenhand library check --from BACKUP`).";
    case 'audio-of-another-take':
      return 'The recording is not the one that this result was made from, so the take was not kept.';
    case 'result-unreadable':
      return `The result of this take can't be read (${facts.reason}). Its recording can be graded again.`;
    case 'result-is-newer':
      return `The result of this take was made by a newer version of the program (result version ${facts.version}; this one reads up to ${facts.known}). Get the newer version to see it.`;
    case 'name-empty':
      return 'A player needs a name. Write one with at least one letter.';
    case 'value-out-of-range':
      return `${facts.what}: "${facts.value}" can't be kept. ${facts.expected}`;
    case 'library-read-only':
      return `Nothing may be written into "${facts.path}", so nothing was changed there. Takes in it can be seen; to keep more, name a folder of your own.`;
    case 'library-damaged':
      return `The tables${facts.path === undefined ? ' of the library' : ` in "${facts.path}"`} are damaged (${facts.reason}). Keep a copy of the folder; \`evenhand library check\` says what is wrong, and \`evenhand library restore BACKUP --replace\` brings a backup in their place.`;
    case 'disk-failed':
      return `The disk failed at "${facts.path}" (${facts.reason}). What was kept before is as it was as far as the disk can be read; copy it to another disk, then try again there.`;
    case 'no-room':
      return facts.path === undefined
        ? 'There is no room left on this device for the take. It was not kept; export and delete old takes, or make room.'
        : `There is no room left on the disk of "${facts.path}". Nothing new was finished there, and what was there before is as it was; make room, or name a folder on another disk.`;
    case 'no-private-files':
      return "This browser window keeps nothing (a private window, or an old browser), so takes can't be kept here. Recording and grading work all the same; save the report if you want to keep it.";
    case 'backup-place-taken':
      return `"${facts.path}" holds other things than a backup, so nothing was written there. Name an empty folder, a new one, or an earlier backup.`;
    case 'backup-overlaps':
      return `"${facts.path}" is the library itself or lies in it, or holds it. Choose a folder apart from it, best on another disk.`;
    case 'no-backup-there':
      return `There is no backup in "${facts.path}": it holds no takes.sqlite. Name the folder that \`evenhand library backup\` wrote; a file that \`evenhand library export\` wrote is taken in with \`evenhand library import\`.`;
    case 'backup-damaged':
      return `The tables of "${facts.path}" can't be trusted (${facts.reason}). Nothing was changed; use another backup.`;
    case 'backup-incomplete':
      return `Of its recordings ${facts.count} are missing or damaged, the first of them "${facts.name}". Nothing was changed. Use another backup, or add --incomplete to bring back the rest: their results can be seen, but not heard.`;
    case 'library-not-empty':
      return `The library in "${facts.path}" holds takes, people or notes already (${facts.takes} takes). Nothing was changed. Name an empty folder with --library, or add --replace to put the backup in the place of all of them.`;
    case 'library-in-use':
      return `Another program has "${facts.path}" open. Nothing was changed there; close that program, then try again.`;
    case 'archive-unreadable':
      return `"${facts.path}" is no archive of a library, or it is damaged (${facts.reason}). Nothing was changed; export it anew, or get the file again.`;
    case 'server-gone':
      return 'Takes are kept in a folder of this computer, but the program that shows it has ended. Nothing was changed; start `evenhand serve` again, then try once more.';
    case 'library-failed':
      return `Something went wrong in the library of takes (${facts.reason}). Nothing was changed by it; load the page again and try once more.`;
    case 'open-elsewhere':
      return 'My takes is busy in another tab of this browser. Close that tab, then try again here.';
  }
}
