import { useEffect } from 'preact/hooks';
import { localDay } from '../library/local-day.ts';
import { usePlayer } from '../library/use-player.ts';
import { useLibrary } from '../library/views/use-library.ts';

/** Ticks the box where the player noted discomfort today already, here or under Practice time. */
export function DiscomfortToday({ noted }: { readonly noted: (noted: boolean) => void }) {
  const player = usePlayer();
  const { value } = useLibrary(
    (library) => {
      const day = localDay(Date.now());
      return library.listDiscomfort({ personId: player, fromDay: day, toDay: day });
    },
    [player],
  );
  useEffect(() => {
    if (value !== null) noted(value.length > 0);
  }, [value]);
  return null;
}
