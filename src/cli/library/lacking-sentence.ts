import type { KeptRecording } from '../../library/backup/kept-tables.ts';
import { printable } from '../text-layout.ts';

/** What a copy of a library lacks because its source does; empty where it lacks nothing. */
export function lackingSentence(lacking: readonly KeptRecording[]): string {
  if (lacking.length === 0) return '';
  const [first] = lacking;
  const others = lacking.length > 1 ? ` and ${lacking.length - 1} more` : '';
  return `Without the recording "${printable(first!.name)}"${others}, missing or damaged where it came from; their results are there. \`evenhand library check\` tells more.\n`;
}
