import type { ListedTake } from '../../library/listed-takes.ts';
import { plainWords, takeFileEnding } from '../../library/take-file/take-file-name.ts';
import { playedInWords } from './take-words.ts';

/** Bytes of recordings in one file: little enough for a phone to handle, and for most clouds. Our judgement. */
const mostBytes = 300_000_000;

/** One take file to be written. */
interface ExportPart {
  readonly name: string;
  readonly ids: readonly string[];
}

/**
 * Takes shared out over as many take files as they need, in their order, with the files' names.
 *
 * @example exportParts([take], '2026-03-09') // [{ name: '2026-03-02-accents-on-one.take.zip', ids: [take.id] }]
 */
export function exportParts(takes: readonly ListedTake[], today: string, most = mostBytes): ExportPart[] {
  const groups: ListedTake[][] = [];
  let bytes = 0;
  for (const take of takes) {
    const own = take.audioBytes ?? 0;
    if (groups.length === 0 || bytes + own > most) {
      groups.push([]);
      bytes = 0;
    }
    groups.at(-1)!.push(take);
    bytes += own;
  }
  return groups.map((group, index) => {
    const only = takes.length === 1 ? takes[0]! : null;
    const base =
      only === null ? `takes-${today}` : `${only.day}-${plainWords(playedInWords(only)) || 'take'}`;
    const part = groups.length === 1 ? '' : `-part-${index + 1}-of-${groups.length}`;
    return { name: `${base}${part}${takeFileEnding}`, ids: group.map(({ id }) => id) };
  });
}
