import { useLibrary } from '../library/views/use-library.ts';

/** A player's name, once the library has said it. */
export function PlayerName({ player }: { readonly player: string }) {
  const { value } = useLibrary((library) => library.listPeople(), [player]);
  return <>{value === null ? '…' : (value.find(({ id }) => id === player)?.name ?? 'no name')}</>;
}
