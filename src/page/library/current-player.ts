const storageKey = 'evenhand-player';

/** Id of the player whom new takes belong to, or null for nobody in particular. */
export function currentPlayer(): string | null {
  try {
    return localStorage.getItem(storageKey);
  } catch {
    return null;
  }
}

/** Remembers the player for this browser; where it remembers nothing, until the page is left. */
export function setCurrentPlayer(id: string | null): void {
  try {
    if (id === null) localStorage.removeItem(storageKey);
    else localStorage.setItem(storageKey, id);
  } catch {
    // A browser that keeps nothing asks again next time.
  }
}
