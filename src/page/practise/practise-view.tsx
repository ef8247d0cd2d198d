import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { MicrophoneNote } from '../recording/views/microphone-note.tsx';
import { RecoveredHere } from '../recording/views/recovered-here.tsx';
import { FirstVisit } from '../shell/first-visit.tsx';
import { AroundTheTake } from './around-the-take.tsx';
import { ChooseExercise } from './choose-exercise.tsx';
import { clickWords, keepClick, keptClick } from './click-choice.ts';
import { ClickSettings } from './click-settings.tsx';
import { keepChoice, keptChoice } from './kept-choice.ts';
import { OwnLines } from './own-lines.tsx';
import { chosenSheet, type PractiseChoice, type Way } from './practise-choice.ts';
import { SheetFile } from './sheet-file.tsx';
import { SheetPreview } from './sheet-preview.tsx';
import { StartBar } from './start-bar.tsx';
import { TakeFlow } from './take-flow.tsx';
import { TempoAndTimes } from './tempo-and-times.tsx';

const ways: readonly { readonly way: Way; readonly title: string }[] = [
  { way: 'exercise', title: 'The list' },
  { way: 'own', title: 'My own' },
  { way: 'sheet', title: 'A sheet' },
];

/** Where practising begins: the exercise, the tempo, the click, and the button that starts a take. */
export function PractiseView() {
  const [choice, setChoice] = useState<PractiseChoice>(keptChoice);
  const change = (part: Partial<PractiseChoice>) => setChoice((old) => ({ ...old, ...part }));
  const [click, setClick] = useState(keptClick);
  useEffect(() => keepChoice(choice), [choice]);
  useEffect(() => keepClick(click), [click]);
  const chosen = useMemo(() => chosenSheet(choice), [choice]);
  const fault = chosen.ok || chosen.rising ? null : chosen.sentence;
  const [playing, setPlaying] = useState<Sheet | null>(null);
  const [discomfort, setDiscomfort] = useState(false);
  if (playing !== null)
    return (
      <>
        <h1 class="unseen">Playing</h1>
        <TakeFlow
          sheet={playing}
          rising={chosen.ok && chosen.rising}
          click={click}
          guessFirst={choice.guessFirst}
          discomfort={discomfort}
          leave={() => setPlaying(null)}
        />
      </>
    );

  return (
    <>
      <h1>Practise</h1>
      <FirstVisit />
      <RecoveredHere />
      <div class="practise">
        <section aria-labelledby="what">
          <h2 id="what">What you play</h2>
          <fieldset class="ways">
            <legend class="unseen">Where the exercise comes from</legend>
            {ways.map(({ way, title }) => (
              <label key={way}>
                <input
                  type="radio"
                  name="way"
                  checked={choice.way === way}
                  onChange={() => change({ way })}
                />
                <span>{title}</span>
              </label>
            ))}
          </fieldset>
          {choice.way === 'exercise' && (
            <ChooseExercise exercise={choice.exercise} choose={(exercise) => change({ exercise })} />
          )}
          {choice.way === 'own' && (
            <OwnLines text={choice.own} fault={fault} write={(own) => change({ own })} />
          )}
          {choice.way === 'sheet' && (
            <SheetFile sheet={choice.sheet} fault={fault} open={(sheet) => change({ sheet })} />
          )}
        </section>
        <section aria-labelledby="notes">
          <h2 id="notes">The notes</h2>
          {chosen.ok && <SheetPreview sheet={chosen.sheet} rising={chosen.rising} />}
          <TempoAndTimes choice={choice} chosen={chosen} change={change} />
          <details class="click">
            <summary>Click: {clickWords(click)}</summary>
            <ClickSettings click={click} change={(part) => setClick((old) => ({ ...old, ...part }))} />
          </details>
          <AroundTheTake
            guessFirst={choice.guessFirst}
            discomfort={discomfort}
            change={change}
            setDiscomfort={setDiscomfort}
          />
          {discomfort && chosen.ok && chosen.rising && (
            <p class="fault" role="status">
              This isn't the day to look for a limit: nothing that gets faster and faster can be started.
            </p>
          )}
          <MicrophoneNote />
        </section>
      </div>
      <StartBar
        sheet={chosen.ok && !(chosen.rising && discomfort) ? chosen.sheet : null}
        click={click}
        start={setPlaying}
      />
    </>
  );
}
