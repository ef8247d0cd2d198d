import { settingRanges } from '../../core/exercise/line-settings.ts';
import { NumberField } from './number-field.tsx';
import { type PractiseChoice, riseSteps } from './practise-choice.ts';

interface Props {
  readonly choice: PractiseChoice;
  /** Why it can't rise like that, or null. */
  readonly fault: string | null;
  readonly change: (part: Partial<PractiseChoice>) => void;
}

/** From which tempo to which an exercise rises, by how much, and how often each is played. */
export function RisingTempo({ choice, fault, change }: Props) {
  const { bpm, riseTo, riseStep, riseTimes } = choice;
  return (
    <>
      <p class="quiet">
        The click gets faster without a pause. The take ends by itself where you stop or the beat gets away
        from you; then you see up to which tempo it was even, up to which the accents held, and so on.
        Headphones at a low volume are best: with a click that the microphone hears, strokes aren't counted.
      </p>
      <div class="tempo-and-times">
        <NumberField
          label="First tempo"
          value={bpm}
          {...settingRanges.tempo}
          set={(to) => change({ bpm: to })}
        />
        <NumberField
          label="Last tempo"
          value={riseTo}
          {...settingRanges.tempo}
          set={(to) => change({ riseTo: to })}
        />
        <NumberField
          label="Each time faster by"
          value={riseStep}
          {...riseSteps}
          set={(to) => change({ riseStep: to })}
        />
        <NumberField
          label="Times at each tempo"
          value={riseTimes}
          {...settingRanges.times}
          set={(to) => change({ riseTimes: to })}
        />
      </div>
      <p class="fault" role="status">
        {fault}
      </p>
    </>
  );
}
