import { useEffect, useRef, useState } from 'preact/hooks';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { useStartStopKeys } from '../shell/start-stop-keys.ts';
import type { ClickChoice } from './click-choice.ts';
import { hearExercise } from './hear-exercise.ts';
import { RestNote } from './rest-note.tsx';

interface Props {
  /** Null while what is chosen can't be played. */
  readonly sheet: Sheet | null;
  readonly click: ClickChoice;
  readonly start: (sheet: Sheet) => void;
}

/** The bar that stays in sight: hear the exercise, or play and record it. */
export function StartBar({ sheet, click, start }: Props) {
  const stopHearing = useRef<(() => void) | null>(null);
  const [hearing, setHearing] = useState(false);
  const quiet = () => {
    stopHearing.current?.();
    stopHearing.current = null;
    setHearing(false);
  };
  // What is heard is what was chosen; another choice is another thing to hear.
  useEffect(() => quiet, [sheet, click.sound, click.subdivisions, click.bell, click.volume]);
  const hear = async () => {
    if (hearing || sheet === null) return quiet();
    setHearing(true);
    stopHearing.current = await hearExercise(sheet, click, () => setHearing(false));
  };
  const play = () => {
    if (sheet === null) return;
    quiet();
    start(sheet);
  };
  useStartStopKeys(play, false);
  return (
    <div class="start-bar">
      <RestNote />
      <button type="button" disabled={sheet === null} onClick={() => void hear()}>
        {hearing ? '■ Be quiet' : '♪ Hear it'}
      </button>
      <button type="button" class="main" disabled={sheet === null} onClick={play}>
        ● Play and record
      </button>
    </div>
  );
}
