import type { PracticeLoad, PracticeSum } from '../../core/progress/practice-load.ts';
import { jumpNote, jumpSentences, recordedOnlyWords } from '../../core/progress/practice-words.ts';
import { rounded } from '../../core/result/figures.ts';
import { dayInWords } from '../library/take-words.ts';

const minutes = (value: number) => (value === 0 ? '–' : rounded(value, value < 10 ? 1 : 0));

/** Minutes and strokes of each hand by week and by day, with large jumps as facts. */
export function LoadTable({ load }: { readonly load: PracticeLoad }) {
  const jumps = jumpSentences(load);
  if (load.days.length === 0)
    return <p role="status">Nothing was recorded or written down in the last eight weeks.</p>;
  return (
    <section aria-labelledby="how-much">
      <h2 id="how-much">How much</h2>
      <p>{recordedOnlyWords(load)}</p>
      {jumps.length > 0 && (
        <>
          <p>Weeks with much more than before:</p>
          <ul>
            {jumps.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <p class="quiet">{jumpNote}</p>
        </>
      )}
      <Sums caption="Week by week" first="Week from" sums={load.weeks.toReversed()} />
      <details>
        <summary>Day by day</summary>
        <Sums caption="Day by day" first="Day" sums={load.days.toReversed()} />
      </details>
    </section>
  );
}

interface SumsProps {
  readonly caption: string;
  readonly first: string;
  readonly sums: readonly PracticeSum[];
}

function Sums({ caption, first, sums }: SumsProps) {
  return (
    <table class="load">
      <caption class="unseen">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{first}</th>
          <th scope="col">Minutes recorded</th>
          <th scope="col">Minutes written down</th>
          <th scope="col">Strokes right</th>
          <th scope="col">Strokes left</th>
        </tr>
      </thead>
      <tbody>
        {sums.map(({ from, recordedMinutes, loggedMinutes, strokes: { R, L, untold } }) => (
          <tr key={from}>
            <th scope="row">{dayInWords(from)}</th>
            <td data-name="minutes recorded">{minutes(recordedMinutes)}</td>
            <td data-name="minutes written down">{minutes(loggedMinutes)}</td>
            <td data-name="strokes right">{R.toLocaleString('en-GB')}</td>
            <td data-name="strokes left">
              {L.toLocaleString('en-GB')}
              {untold > 0 && ` (and ${untold.toLocaleString('en-GB')} whose hand isn't told)`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
