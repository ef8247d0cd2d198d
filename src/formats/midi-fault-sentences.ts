import type { MidiFault } from './midi-notes.ts';

/**
 * One sentence on what is wrong with a MIDI file and one on what to do about it.
 *
 * @example
 * midiFaultSentence('take.mid', { code: 'midi-no-notes', facts: {} });
 * // '"take.mid" is a MIDI file without a note. Choose the file that was recorded from the pad.'
 */
export function midiFaultSentence(name: string, fault: MidiFault | NoteChoiceFault): string {
  const file = `"${name}"`;
  switch (fault.code) {
    case 'midi-damaged':
      return `${file} is a damaged MIDI file (${fault.facts.reason}). Export it from the pad's program again.`;
    case 'midi-too-large':
      return `${file} has ${fault.facts.bytes} bytes; a MIDI file may have ${fault.facts.most}. Export the part with the take alone.`;
    case 'midi-sequences':
      return `${file} holds several pieces that don't belong together (format 2). Export the take as format 0 or 1.`;
    case 'midi-no-notes':
      return `${file} is a MIDI file without a note. Choose the file that was recorded from the pad.`;
    case 'midi-too-long':
      return `${file} lasts more than ${Math.floor(fault.facts.seconds / 3600)} hours; ${fault.facts.most / 3600} can be read. Export the part with the take alone.`;
    case 'midi-key-missing':
      return `${file} has no note of key ${fault.facts.key}. Its notes are of ${fault.facts.there}: choose among them with --keys.`;
  }
}

/** A key was asked for that sent nothing. */
interface NoteChoiceFault {
  readonly code: 'midi-key-missing';
  /** `there`: the keys that sent notes, in words. */
  readonly facts: { readonly key: number; readonly there: string };
}
