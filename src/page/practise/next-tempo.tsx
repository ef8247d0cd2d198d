import { advisedBpm } from '../../core/progress/advised-bpm.ts';
import { sentence } from '../../core/result/sentences.ts';
import { localDay } from '../library/local-day.ts';
import { counted } from '../library/take-words.ts';
import { usePlayer } from '../library/use-player.ts';
import { useLibrary } from '../library/views/use-library.ts';

interface Props {
  readonly exerciseId: string;
  readonly bpm: number;
  readonly set: (bpm: number) => void;
  /** Changes when a note on discomfort came or went. */
  readonly on: unknown;
}

/** The tempo to try next for an exercise, from the player's kept takes of it; nothing where there are none. */
export function NextTempo({ exerciseId, bpm, set, on }: Props) {
  const player = usePlayer();
  const { value } = useLibrary(
    async (library) => {
      const asked = { personId: player, today: localDay(Date.now()), exerciseId };
      return { exerciseId, found: await library.nextTempoOf(asked) };
    },
    [player, exerciseId, on],
  );
  if (value === null || value.exerciseId !== exerciseId || value.found === null) return null;
  const { next, plays, days, cleanestTempo } = value.found;
  const advised = advisedBpm(next);
  return (
    <div class="next-tempo">
      <p>
        <strong>From your takes:</strong> {sentence(next)}{' '}
        <span class="quiet">
          {counted(plays, 'take')} on {counted(days, 'day')}
          {cleanestTempo === null ? '' : `; cleanest so far at ${Math.round(cleanestTempo.bpm)}`}.
        </span>
      </p>
      {advised !== null && advised !== Math.round(bpm) && (
        <button type="button" onClick={() => set(advised)}>
          Take {advised}
        </button>
      )}
    </div>
  );
}
