import type { ListedTake } from '../../../library/listed-takes.ts';
import { TakeRow } from './take-row.tsx';

interface Props {
  readonly takes: readonly ListedTake[];
  readonly chosen: ReadonlySet<string>;
  readonly choose: (chosen: ReadonlySet<string>) => void;
}

/** A page of takes, any of which can be chosen for what is done with several. */
export function TakeList({ takes, chosen, choose }: Props) {
  const set = (id: string, on: boolean) => {
    const next = new Set(chosen);
    if (on) next.add(id);
    else next.delete(id);
    choose(next);
  };
  return (
    <ul class="take-list">
      {takes.map((take) => (
        <TakeRow key={take.id} take={take} chosen={chosen.has(take.id)} choose={(on) => set(take.id, on)} />
      ))}
    </ul>
  );
}
