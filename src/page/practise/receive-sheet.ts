import { currentPlayer, setCurrentPlayer } from '../library/current-player.ts';
import { faultInWords } from '../library/fault-words.ts';
import { pageLibrary } from '../library/page-library.ts';
import { dayInWords } from '../library/take-words.ts';

/** Keeps a teacher's sheet with headings as an assignment, and says so; null for a sheet that is none. */
export async function receiveSheet(sheetText: string): Promise<string | null> {
  const player = currentPlayer();
  const library = pageLibrary();
  try {
    const asked = { id: crypto.randomUUID(), sheetText, personId: player, setAt: Date.now() };
    const received = await library.receiveAssignment(asked);
    if (received === null) return null;
    const { outcome, personId, dueDay } = received;
    if (player === null && personId !== null) setCurrentPlayer(personId);
    const due = dueDay === null ? '' : `, due on ${dayInWords(dueDay)}`;
    const kept = `${outcome === 'kept' ? 'Kept as an assignment' : 'This assignment is kept already'}${due}.`;
    if (player === null || personId === player || personId === null) return kept;
    const name = (await library.listPeople()).find(({ id }) => id === personId)?.name ?? '';
    return `${kept} It is for ${name}, and somebody else plays now: choose ${name} under "Who plays", so that takes count.`;
  } catch (error) {
    return `The sheet can be played, but not kept as an assignment: ${faultInWords(error)}`;
  }
}
