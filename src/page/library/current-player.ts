const storageKey = 'evenhand-player';
const listeners = new Set<() => void>();

/** Id of the player whom new takes belong to, or null for nobody in particular. */
export function currentPlayer(): string | null {
  try {
    return localStorage.getItem(storageKey);
  } catch {
    return null;
  }
}

/** Remembers the player for this browser; one that keeps nothing asks again next time. */
export function setCurrentPlayer(id: string | null): void {
  try {
    if (id === null) localStorage.removeItem(storageKey);
    else localStorage.setItem(storageKey, id);
  } catch {
    // New takes belong to nobody in particular, then.
  }
  for (const tell of listeners) tell();
}

/** Calls back whenever another player's turn comes, until the function that comes back is called. */
export function onPlayerChange(tell: () => void): () => void {
  listeners.add(tell);
  return () => listeners.delete(tell);
}
