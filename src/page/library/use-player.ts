import { useEffect, useState } from 'preact/hooks';
import { currentPlayer, onPlayerChange } from './current-player.ts';

/** Id of the player whose turn it is, as it changes. */
export function usePlayer(): string | null {
  const [player, setPlayer] = useState(currentPlayer);
  useEffect(() => onPlayerChange(() => setPlayer(currentPlayer())), []);
  return player;
}
