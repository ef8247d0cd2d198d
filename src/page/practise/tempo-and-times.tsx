import { settingRanges } from '../../core/exercise/line-settings.ts';
import { NumberField } from './number-field.tsx';
import type { ChosenSheet, PractiseChoice } from './practise-choice.ts';
import { RisingTempo } from './rising-tempo.tsx';
import { TempoField } from './tempo-field.tsx';

interface Props {
  readonly choice: PractiseChoice;
  readonly chosen: ChosenSheet;
  readonly change: (part: Partial<PractiseChoice>) => void;
}

/** Tempo and repeats, or from where to where the tempo of a single line rises. */
export function TempoAndTimes({ choice, chosen, change }: Props) {
  const one = chosen.ok ? chosen.rising || chosen.sheet.lines.length === 1 : chosen.rising === true;
  const settings = chosen.ok && chosen.settings;
  return (
    <>
      {one && (
        <label class="tick">
          <input
            type="checkbox"
            checked={choice.rising}
            onChange={({ currentTarget }) => change({ rising: currentTarget.checked })}
          />
          Faster and faster, to find where it breaks
        </label>
      )}
      {one && choice.rising ? (
        <RisingTempo choice={choice} fault={chosen.ok ? null : chosen.sentence} change={change} />
      ) : (
        <SteadyTempo choice={choice} settings={settings} change={change} />
      )}
    </>
  );
}

interface SteadyProps extends Omit<Props, 'chosen'> {
  /** The sheet sets its own. */
  readonly settings: boolean;
}

/** A sheet that sets its own tempo and repeats keeps them unless the player says otherwise. */
function SteadyTempo({ choice, settings, change }: SteadyProps) {
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
