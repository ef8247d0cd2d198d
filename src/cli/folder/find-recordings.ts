import { lstatSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, extname, join, resolve } from 'node:path';
import { CommandFault } from '../command-fault.ts';

/** A recording of a folder. */
interface FoundRecording {
  readonly path: string;
  /** As seen from the folder that was named, with slashes; with several folders their names come first. */
  readonly shown: string;
}

/** Ends of names that recordings have, readable or not: what can't be read is told, not passed over. */
const soundEndings = new Set(
  'wav wave bwf rf64 w64 aif aiff aifc au caf flac mp3 m4a m4b mp4 mov 3gp aac ogg oga opus webm mka amr wma'
    .split(' ')
    .map((ending) => `.${ending}`),
);

const byName = new Intl.Collator('en', { numeric: true }).compare;

/**
 * The recordings in folders and in the folders inside them, by name ("take 2" before "take 10"), each once. A recording
 * may be named itself. Hidden files and folders, links to folders, and `except` are left out. Throws an
 * unreadable-input fault for a folder that is missing or can't be listed.
 *
 * @example findRecordings(['tuesday'], 'tuesday/reports') // [{ path: 'tuesday/take 2.wav', shown: 'take 2.wav' }, …]
 */
export function findRecordings(named: readonly string[], except?: string): FoundRecording[] {
  const leaveOut = except === undefined ? undefined : resolve(except);
  const seen = new Set<string>();
  const found: FoundRecording[] = [];

  const walk = (folder: string, shown: string): void => {
    if (resolve(folder) === leaveOut) return;
    for (const name of namesIn(folder)) {
      if (name.startsWith('.')) continue;
      const path = join(folder, name);
      const entry = entryOf(path);
      if (entry === 'folder') walk(path, `${shown}${name}/`);
      else if (entry === 'file' && soundEndings.has(extname(name).toLowerCase()))
        add(path, `${shown}${name}`);
    }
  };
  const add = (path: string, shown: string): void => {
    const place = realpathSync(path);
    if (seen.has(place)) return;
    seen.add(place);
    found.push({ path, shown });
  };

  for (const path of named) {
    const status = statSync(path, { throwIfNoEntry: false });
    if (status === undefined)
      throw new CommandFault(
        'unreadableInput',
        `There is no folder or recording "${path}" here. Check its name.`,
      );
    const name = basename(resolve(path));
    if (!status.isDirectory()) add(path, name);
    else walk(path, named.length === 1 ? '' : `${name}/`);
  }
  return found.toSorted((a, b) => byName(a.shown, b.shown));
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    const reason = (error as Error).message;
    throw new CommandFault(
      'unreadableInput',
      `The folder "${folder}" can't be listed: ${reason}. Change its permissions or leave it out.`,
    );
  }
}

function entryOf(path: string): 'folder' | 'file' | 'other' {
  // A link to a folder could lead back to where it stands.
  if (lstatSync(path, { throwIfNoEntry: false })?.isDirectory()) return 'folder';
  return statSync(path, { throwIfNoEntry: false })?.isFile() ? 'file' : 'other';
}
