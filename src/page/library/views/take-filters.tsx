import type { FilterChoices } from '../../../library/filter-choices.ts';
import type { TakeOrder } from '../../../library/list-takes.ts';
import type { ListedPerson } from '../../../library/people.ts';
import type { TakeFilter } from '../../../library/take-filter.ts';
import { Choice } from '../../shell/choice.tsx';

export interface Narrowing {
  readonly filter: TakeFilter;
  readonly order: TakeOrder;
}

interface Props extends Narrowing {
  readonly choices: FilterChoices;
  readonly people: readonly ListedPerson[];
  readonly change: (narrowing: Narrowing) => void;
}

const nobody = '-';

/** Narrows the listing of takes. */
export function TakeFilters({ filter, order, choices, people, change }: Props) {
  const narrow = (part: TakeFilter) => change({ order, filter: { ...filter, ...part } });
  const orNothing = (text: string) => (text === '' ? undefined : text);
  const bpm = (text: string) => (Number(text) > 0 ? Number(text) : undefined);
  const narrowed = Object.values(filter).some((value) => value !== undefined);
  return (
    <details class="take-filters" open={narrowed}>
      <summary>Find takes</summary>
      <div class="filter-fields">
        <Choice
          label="Player"
          value={filter.personId === null ? nobody : (filter.personId ?? '')}
          set={(id) => narrow({ personId: id === nobody ? null : orNothing(id) })}
        >
          <option value="">all</option>
          {people.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
          <option value={nobody}>without a name</option>
        </Choice>
        <Choice
          label="Exercise"
          value={filter.exerciseId ?? ''}
          set={(id) => narrow({ exerciseId: orNothing(id) })}
        >
          <option value="">all</option>
          {choices.exercises.map(({ id, label, notation }) => (
            <option key={id} value={id}>
              {label === '' ? notation : label}
            </option>
          ))}
        </Choice>
        <label class="field">
          <span>Words in the title</span>
          <input
            type="search"
            value={filter.title ?? ''}
            onInput={({ currentTarget }) => narrow({ title: orNothing(currentTarget.value) })}
          />
        </label>
        <label class="field">
          <span>From day</span>
          <input
            type="date"
            value={filter.fromDay ?? ''}
            onChange={({ currentTarget }) => narrow({ fromDay: orNothing(currentTarget.value) })}
          />
        </label>
        <label class="field">
          <span>To day</span>
          <input
            type="date"
            value={filter.toDay ?? ''}
            onChange={({ currentTarget }) => narrow({ toDay: orNothing(currentTarget.value) })}
          />
        </label>
        <label class="field">
          <span>Tempo from, BPM</span>
          <input
            type="text"
            inputMode="numeric"
            value={filter.fromBpm ?? ''}
            onChange={({ currentTarget }) => narrow({ fromBpm: bpm(currentTarget.value) })}
          />
        </label>
        <label class="field">
          <span>Tempo to, BPM</span>
          <input
            type="text"
            inputMode="numeric"
            value={filter.toBpm ?? ''}
            onChange={({ currentTarget }) => narrow({ toBpm: bpm(currentTarget.value) })}
          />
        </label>
        {choices.tags.length > 0 && (
          <Choice label="Tag" value={filter.tag ?? ''} set={(tag) => narrow({ tag: orNothing(tag) })}>
            <option value="">all</option>
            {choices.tags.map((tag) => (
              <option key={tag}>{tag}</option>
            ))}
          </Choice>
        )}
        {choices.techniques.length > 0 && (
          <Choice
            label="Technique"
            value={filter.technique ?? ''}
            set={(technique) => narrow({ technique: orNothing(technique) })}
          >
            <option value="">all</option>
            {choices.techniques.map((technique) => (
              <option key={technique}>{technique}</option>
            ))}
          </Choice>
        )}
        <Choice label="Order" value={order} set={(to) => change({ filter, order: to as TakeOrder })}>
          <option value="newest">newest first</option>
          <option value="oldest">oldest first</option>
          <option value="cleanest">highest score first</option>
        </Choice>
      </div>
      {narrowed && (
        <button type="button" onClick={() => change({ order, filter: {} })}>
          Show all takes again
        </button>
      )}
    </details>
  );
}
