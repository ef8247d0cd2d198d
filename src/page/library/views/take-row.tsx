import type { ListedTake } from '../../../library/listed-takes.ts';
import {
  counted,
  dayInWords,
  dimensionsInWords,
  playedInWords,
  scoreInWords,
  tempoInWords,
  timeInWords,
} from '../take-words.ts';

interface Props {
  readonly take: ListedTake;
  readonly chosen: boolean;
  readonly choose: (chosen: boolean) => void;
}

/** One take in the listing: when, what, how fast, how it went, and a way to open it. */
export function TakeRow({ take, chosen, choose }: Props) {
  const { id, day, recordedAt, personName, remarks, tags, audioHash } = take;
  const played = playedInWords(take);
  const dimensions = dimensionsInWords(take);
  const notes = [
    personName ?? '',
    remarks > 0 ? counted(remarks, 'remark') : '',
    ...tags,
    audioHash === null ? 'without sound' : '',
  ].filter((note) => note !== '');
  return (
    <li class="take-row">
      <label class="choose">
        <input
          type="checkbox"
          checked={chosen}
          onChange={({ currentTarget }) => choose(currentTarget.checked)}
        />
        <span class="unseen">
          Choose {played}, {dayInWords(day)}, {timeInWords(recordedAt)}
        </span>
      </label>
      <a href={`#/takes/${id}`}>
        <span class="when">
          {dayInWords(day)}, {timeInWords(recordedAt)}
        </span>
        <strong class="what">{played}</strong>
        <span class="tempo">{tempoInWords(take)}</span>
        <strong class="score">{scoreInWords(take)}</strong>
        {dimensions !== '' && <span class="dimensions">{dimensions}</span>}
        {notes.length > 0 && <span class="notes">{notes.join(' · ')}</span>}
      </a>
    </li>
  );
}
