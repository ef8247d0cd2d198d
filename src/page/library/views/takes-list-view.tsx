import { useEffect, useState } from 'preact/hooks';
import type { LibraryClient } from '../../../library/library-calls.ts';
import type { PageKey } from '../../../library/list-takes.ts';
import type { ListedTake } from '../../../library/listed-takes.ts';
import { GuessRecords } from '../../result/guess-records.tsx';
import { pageLibrary } from '../page-library.ts';
import { counted } from '../take-words.ts';
import { AddRecordings } from './add-recordings.tsx';
import { DeleteTakes } from './delete-takes.tsx';
import { ExportTakes } from './export-takes.tsx';
import { LibraryWays } from './library-ways.tsx';
import { PlayerChoice } from './player-choice.tsx';
import { Room } from './room.tsx';
import { type Narrowing, TakeFilters } from './take-filters.tsx';
import { TakeList } from './take-list.tsx';
import { useLibrary } from './use-library.ts';
import { WhereKept } from './where-kept.tsx';

/** With more takes than these a phone's screen has nothing else on it, and what is below is led to. Our judgement. */
const fewOnTop = 4;
const onPage = 30;

/** All that the view shows beside the takes themselves. */
const surroundings = async (library: LibraryClient) => ({
  people: await library.listPeople(),
  choices: await library.filterChoices(),
  use: await library.storageUse(),
  sheets: await library.listSheets(30),
});

/** Every take that a narrowing lets through, page by page. */
async function allTakes({ filter, order }: Narrowing): Promise<readonly ListedTake[]> {
  const takes: ListedTake[] = [];
  let after: PageKey | null = null;
  do {
    const page: { takes: readonly ListedTake[]; next: PageKey | null } = await pageLibrary().listTakes({
      filter,
      order,
      after,
      limit: 200,
    });
    takes.push(...page.takes);
    after = page.next;
  } while (after !== null);
  return takes;
}

/** Where two takes are held against each other, the older one first. */
const pairAddress = (takes: readonly ListedTake[]): string =>
  `#/compare/${takes
    .toSorted((a, b) => a.recordedAt - b.recordedAt)
    .map(({ id }) => id)
    .join('/')}`;

/** My takes: finding, choosing, exporting and deleting them, and taking recordings in. */
export function TakesListView() {
  const [narrowing, setNarrowing] = useState<Narrowing>({ filter: {}, order: 'newest' });
  const [pages, setPages] = useState(1);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const around = useLibrary(surroundings);
  const { filter, order } = narrowing;
  const found = useLibrary(
    async (library) => ({
      ...(await library.listTakes({ filter, order, limit: onPage * pages })),
      count: await library.countTakes(filter),
    }),
    [narrowing, pages],
  );
  const again = () => {
    around.again();
    found.again();
  };
  useEffect(() => {
    addEventListener('focus', again); // another tab may have changed something
    return () => removeEventListener('focus', again);
  }, []);

  if (around.fault !== null || found.fault !== null) {
    return (
      <>
        <h1>My takes</h1>
        <p class="fault" role="alert">
          {around.fault ?? found.fault}
        </p>
        <button type="button" onClick={again}>
          Try again
        </button>
      </>
    );
  }
  if (around.value === null || found.value === null) return <p class="quiet">One moment …</p>;
  const { people, choices, use, sheets } = around.value;
  const { takes, next, count } = found.value;
  const ids = [...chosen];
  return (
    <>
      <LibraryWays />
      <h1>My takes</h1>
      <WhereKept />
      <div class="takes">
        <section aria-label="Takes">
          {use.takes === 0 ? (
            <p>
              No take is kept here yet. Takes that you record under <a href="#/">Practise</a> come here by
              themselves. Recordings from a phone and take files that somebody sent you can be added, too.
            </p>
          ) : (
            <>
              <TakeFilters
                {...narrowing}
                choices={choices}
                people={people}
                change={(to) => {
                  setNarrowing(to);
                  setPages(1);
                  setChosen(new Set());
                }}
              />
              <p role="status">{count === 0 ? 'No take is like that.' : counted(count, 'take')}</p>
              {takes.length > fewOnTop && (
                <button
                  type="button"
                  class="to-adding"
                  onClick={() => document.getElementById('add')?.scrollIntoView()}
                >
                  Add recordings
                </button>
              )}
              <TakeList takes={takes} chosen={chosen} choose={setChosen} />
              {next !== null && (
                <button type="button" onClick={() => setPages(pages + 1)}>
                  Show more takes
                </button>
              )}
              <div class={ids.length > 0 ? 'actions chosen' : 'actions'}>
                {ids.length > 0 && <strong>{ids.length} chosen</strong>}
                <ExportTakes
                  label={
                    ids.length > 0 || count < 2 ? 'Export' : `Export all ${count.toLocaleString('en-GB')}`
                  }
                  disabled={count === 0}
                  takes={async () =>
                    ids.length > 0
                      ? (await allTakes(narrowing)).filter(({ id }) => chosen.has(id))
                      : allTakes(narrowing)
                  }
                />
                {ids.length === 2 && (
                  <a class="button" href={pairAddress(takes.filter(({ id }) => chosen.has(id)))}>
                    Compare these two
                  </a>
                )}
                {ids.length > 0 && (
                  <DeleteTakes
                    ids={ids}
                    deleted={() => {
                      setChosen(new Set());
                      again();
                    }}
                  />
                )}
              </div>
            </>
          )}
        </section>
        <div class="beside">
          <AddRecordings sheets={sheets} changed={again} />
          <section aria-labelledby="players">
            <h2 id="players">Who plays</h2>
            <PlayerChoice people={people} changed={again} />
          </section>
          <GuessRecords on={people} />
          <Room use={use} />
        </div>
      </div>
    </>
  );
}
