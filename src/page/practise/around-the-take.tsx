import type { PractiseChoice } from './practise-choice.ts';

interface Props {
  readonly guessFirst: boolean;
  readonly discomfort: boolean;
  readonly change: (part: Partial<PractiseChoice>) => void;
  readonly setDiscomfort: (discomfort: boolean) => void;
}

/** What is asked before and after a take. */
export function AroundTheTake({ guessFirst, discomfort, change, setDiscomfort }: Props) {
  return (
    <>
      <label class="tick">
        <input
          type="checkbox"
          checked={guessFirst}
          onChange={({ currentTarget }) => change({ guessFirst: currentTarget.checked })}
        />
        Let me guess how it went before I see it
      </label>
      <label class="tick">
        <input
          type="checkbox"
          checked={discomfort}
          onChange={({ currentTarget }) => setDiscomfort(currentTarget.checked)}
        />
        Something hurts, tingles or is numb today
      </label>
      {discomfort && (
        <p class="fault" role="status">
          Then rest. Don't play through it; if it comes back, see a physician or physiotherapist. No faster
          tempo will be advised.
        </p>
      )}
    </>
  );
}
