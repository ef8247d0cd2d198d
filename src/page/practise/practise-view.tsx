import { useEffect, useMemo, useState } from 'preact/hooks';
import { parseSheet } from '../../core/exercise/parse-sheet.ts';
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
import { keepPlayedOn, keptPlayedOn, PlayedOnFields } from './played-on.tsx';
import { chosenSheet, type PractiseChoice, type Way } from './practise-choice.ts';
import { SheetFile } from './sheet-file.tsx';
import { SheetPreview } from './sheet-preview.tsx';
import { StartBar } from './start-bar.tsx';
import { TakeFlow } from './take-flow.tsx';
import { TempoAndTimes } from './tempo-and-times.tsx';
import { whenKept } from './when-kept.tsx';
import { WhoPlays } from './who-plays.tsx';

const AssignmentsDue = whenKept(async () => (await import('./assignments-due.tsx')).AssignmentsDue);
const NextTempo = whenKept(async () => (await import('./next-tempo.tsx')).NextTempo);
const DiscomfortToday = whenKept(async () => (await import('./discomfort-today.tsx')).DiscomfortToday);

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
  const [noted, setNoted] = useState<string | null>(null);
  const [notes, setNotes] = useState(0);
  const hurts = async (on: boolean) => {
    setDiscomfort(on);
    const { keepDiscomfort } = await import('./keep-discomfort.ts');
    setNoted(await keepDiscomfort(on));
    setNotes((count) => count + 1);
  };
  const [playedOn, setPlayedOn] = useState(keptPlayedOn);
  useEffect(() => keepPlayedOn(playedOn), [playedOn]);
  const [received, setReceived] = useState<string | null>(null);
  const open = async (sheet: NonNullable<PractiseChoice['sheet']>) => {
    change({ sheet });
    const parsed = parseSheet(sheet.text);
    if (!parsed.ok || parsed.sheet.assigned === undefined) return setReceived(null);
    const { receiveSheet } = await import('./receive-sheet.ts');
    setReceived(await receiveSheet(sheet.text));
  };
  const one = chosen.ok && !chosen.rising && chosen.sheet.lines.length === 1 ? chosen.sheet.lines[0]! : null;
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
      <WhoPlays />
      <AssignmentsDue
        on={received}
        play={(sheet) => change({ way: 'sheet', sheet, tempoAsWritten: true, rising: false })}
      />
      <DiscomfortToday noted={setDiscomfort} />
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
            <>
              <SheetFile sheet={choice.sheet} fault={fault} open={(sheet) => void open(sheet)} />
              <p role="status">{received}</p>
            </>
          )}
        </section>
        <section aria-labelledby="notes">
          <h2 id="notes">The notes</h2>
          {chosen.ok && <SheetPreview sheet={chosen.sheet} rising={chosen.rising} />}
          <TempoAndTimes choice={choice} chosen={chosen} change={change} />
          {one !== null && (
            <NextTempo exerciseId={one.id} bpm={choice.bpm} on={notes} set={(bpm) => change({ bpm })} />
          )}
          <details class="click">
            <summary>Click: {clickWords(click)}</summary>
            <ClickSettings click={click} change={(part) => setClick((old) => ({ ...old, ...part }))} />
          </details>
          <AroundTheTake
            guessFirst={choice.guessFirst}
            discomfort={discomfort}
            change={change}
            setDiscomfort={(on) => void hurts(on)}
          />
          <p class="fault" role="status">
            {noted}
          </p>
          <PlayedOnFields playedOn={playedOn} change={setPlayedOn} />
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
