import { useState } from 'preact/hooks';
import { usePlayer } from '../library/use-player.ts';
import { lazyView } from '../shell/lazy-view.tsx';
import { whenKept } from './when-kept.tsx';

const Choose = lazyView(async () => (await import('./choose-player.tsx')).ChoosePlayer);
const Name = whenKept(async () => (await import('./player-name.tsx')).PlayerName);

/** Whom the next take belongs to: a name from the list, one typed now, or none. */
export function WhoPlays() {
  const [open, setOpen] = useState(false);
  const player = usePlayer();
  return (
    <details class="who-plays" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        <span>
          Who plays: <strong>{player === null ? 'no name' : <Name player={player} />}</strong>
        </span>
      </summary>
      {open && <Choose />}
    </details>
  );
}
