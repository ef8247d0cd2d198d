import { settingRanges } from '../../core/exercise/line-settings.ts';
import { NumberField } from './number-field.tsx';
import type { ChosenSheet, PractiseChoice } from './practise-choice.ts';
import { TempoField } from './tempo-field.tsx';

interface Props {
  readonly choice: PractiseChoice;
  readonly chosen: ChosenSheet;
  readonly change: (part: Partial<PractiseChoice>) => void;
}

/** Tempo and repeats; a sheet that sets its own keeps them unless the player says otherwise. */
export function TempoAndTimes({ choice, chosen, change }: Props) {
  const settings = chosen.ok && chosen.settings;
  const asWritten = settings && choice.tempoAsWritten;
  return (
    <div class="tempo-and-times">
      {settings && (
        <label class="tick">
          <input
            type="checkbox"
            checked={choice.tempoAsWritten}
            onChange={({ currentTarget }) => change({ tempoAsWritten: currentTarget.checked })}
          />
          Tempos as the sheet says
        </label>
      )}
      {!asWritten && <TempoField bpm={choice.bpm} set={(bpm) => change({ bpm })} />}
      {!settings && (
        <>
          <NumberField
            label="Times in a row"
            value={choice.repeats}
            {...settingRanges.times}
            set={(repeats) => change({ repeats })}
          />
          <label class="tick">
            <input
              type="checkbox"
              checked={choice.leadChange}
              onChange={({ currentTarget }) => change({ leadChange: currentTarget.checked })}
            />
            Hands change over every second time
          </label>
        </>
      )}
    </div>
  );
}
