import '../library/views/takes.css';
import { LibraryWays } from '../library/views/library-ways.tsx';
import { useLibrary } from '../library/views/use-library.ts';
import type { Route } from '../shell/route.ts';
import { keptPair } from './kept-pair.ts';
import { OtherTake } from './other-take.tsx';
import { WeekReport } from './week-report.tsx';

/** `#/compare/A/B`: two takes held against each other; `#/compare/A` asks for the other one. */
export function CompareView({ route: { parts } }: { readonly route: Route }) {
  const [first, second] = parts;
  return (
    <>
      <LibraryWays />
      <h1>Two takes against each other</h1>
      {first === undefined ? (
        <p>
          Choose two takes in the list of <a href="#/takes">all takes</a> first.
        </p>
      ) : second === undefined ? (
        <OtherTake id={first} />
      ) : (
        <Pair key={`${first} ${second}`} first={first} second={second} />
      )}
    </>
  );
}

function Pair({ first, second }: { readonly first: string; readonly second: string }) {
  const { value, fault } = useLibrary(
    async (library) => {
      const pair = await keptPair(library, first, second);
      return { kind: 'pair' as const, pair };
    },
    [first, second],
  );
  return (
    <>
      <p>
        <a href={`#/takes/${first}`}>The first take</a> · <a href={`#/takes/${second}`}>the second take</a> ·{' '}
        <a href={`#/compare/${second}/${first}`}>the other way round</a> ·{' '}
        <a href={`#/compare/${first}`}>the first one against another take</a>
      </p>
      {fault !== null ? (
        <p class="fault" role="alert">
          {fault}
        </p>
      ) : value === null ? (
        <p class="quiet">Both takes are being read …</p>
      ) : (
        <WeekReport page={value} title="Two takes against each other" file="two-takes.html" />
      )}
    </>
  );
}
