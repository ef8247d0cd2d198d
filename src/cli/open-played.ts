import { createHash } from 'node:crypto';
import { closeSync, openSync, readFileSync, readSync } from 'node:fs';
import { basename } from 'node:path';
import type { Sheet } from '../core/exercise/sheet.ts';
import { type GradeOptions, gradeTake } from '../core/grade-take.ts';
import type { Reason, TakeResult } from '../core/result/take-result.ts';
import type { Source } from '../core/signal/source.ts';
import { CommandFault } from './command-fault.ts';
import { openTake } from './open-take.ts';

/** What was played, whichever way it was taken down. */
export interface Played {
  readonly name: string;
  /** SHA-256 of the file, in hexadecimal. */
  sha256(): string;
  /** Its sound; of an electronic pad's notes one that stands for them. */
  readonly source: Source;
  /** Grades it; what is known of the file itself is added to what the options tell. */
  grade(sheet: Sheet, options: GradeOptions): TakeResult;
  close(): void;
}

/**
 * Opens a recording, or the notes that an electronic pad sent (a Standard MIDI File), `keys` of them or all. Rejects
 * with an unreadable-input fault.
 */
export async function openPlayed(
  path: string,
  keys: readonly number[] | null = null,
  told?: (share: number) => void,
): Promise<Played> {
  if (path !== '-' && beginsLikeMidi(path)) return openNotes(path, keys);
  if (keys !== null)
    throw new CommandFault('usage', '--keys chooses notes of a MIDI file, and this is none. Leave it out.');
  const recording = await openTake(path, told);
  const { name, source, notes, gaps } = recording;
  const found = notes.map(({ code, facts }): Reason => ({ code, facts: { ...facts } }));
  return {
    name,
    sha256: () => recording.sha256(),
    source,
    grade: (sheet, options) =>
      gradeTake(source, sheet, {
        name,
        sha256: recording.sha256(),
        ...options,
        warnings: [...found, ...(options.warnings ?? [])],
        gaps: [...gaps, ...(options.gaps ?? [])],
      }),
    close: () => recording.close(),
  };
}

function beginsLikeMidi(path: string): boolean {
  const head = Buffer.alloc(4);
  try {
    const file = openSync(path, 'r');
    try {
      readSync(file, head, 0, 4, 0);
    } finally {
      closeSync(file);
    }
  } catch {
    return false;
  }
  return head.toString('latin1') === 'MThd';
}

async function openNotes(path: string, keys: readonly number[] | null): Promise<Played> {
  const [{ midiNotes }, { midiFaultSentence }, { gradeNotes, soundOfNotes }] = await Promise.all([
    import('../formats/midi-notes.ts'),
    import('../formats/midi-fault-sentences.ts'),
    import('../core/grade-notes.ts'),
  ]);
  const name = basename(path);
  const bytes = readFileSync(path);
  const read = midiNotes(bytes);
  if (!read.ok) throw new CommandFault('unreadableInput', midiFaultSentence(name, read.fault));
  const count = (key: number) => read.notes.filter((note) => note.key === key).length;
  const there = read.keys.map((key) => `key ${key} (${count(key)})`).join(', ');
  const key = keys?.find((one) => !read.keys.includes(one));
  if (key !== undefined)
    throw new CommandFault(
      'usage',
      midiFaultSentence(name, { code: 'midi-key-missing', facts: { key, there } }),
    );
  const take = { ...read, notes: read.notes.filter((note) => keys === null || keys.includes(note.key)) };
  const several = keys === null && read.keys.length > 1;
  const found: Reason[] = several ? [{ code: 'notes-of-several-keys', facts: { keys: there } }] : [];
  const sha256 = () => createHash('sha256').update(bytes).digest('hex');
  return {
    name,
    sha256,
    source: soundOfNotes(take),
    grade: (sheet, options) =>
      gradeNotes(take, sheet, {
        name,
        sha256: sha256(),
        ...options,
        warnings: [...found, ...(options.warnings ?? [])],
      }),
    close: () => undefined,
  };
}
