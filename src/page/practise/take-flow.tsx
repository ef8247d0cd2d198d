import { useEffect, useRef, useState } from 'preact/hooks';
import type { Breakdown } from '../../core/click-track/breakdown/follow-course.ts';
import { planClicks } from '../../core/click-track/plan-clicks.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import type { LiveStroke } from '../../core/onsets/live-strokes.ts';
import { sharedEngine } from '../engine/shared-engine.ts';
import { LevelMeter } from '../recording/views/level-meter.tsx';
import { showTake } from '../result/shown-take.ts';
import { BreakdownNote, CoveredNote } from './breakdown-note.tsx';
import { type BreakdownWatch, breakdownWatch } from './breakdown-watch.ts';
import { type ClickChoice, clickOptions } from './click-choice.ts';
import { gradeRecorded, takeName } from './grade-recorded.ts';
import { HeardStrip } from './heard-strip.tsx';
import { notePlayed } from './play-time.ts';
import { PlayingPanel } from './playing-panel.tsx';
import { RestNote } from './rest-note.tsx';
import { type SilenceControl, silenceControl } from './silence-control.ts';
import { type StartedTake, startTake } from './take-recorder.ts';

interface Props {
  readonly sheet: Sheet;
  /** The tempo rises from line to line until the take breaks down. */
  readonly rising: boolean;
  readonly click: ClickChoice;
  readonly guessFirst: boolean;
  readonly discomfort: boolean;
  /** Back to choosing. */
  readonly leave: () => void;
}

/** s after the last beat at which a take ends by itself: a player who is late still gets the last strokes in. */
const after = 1.5;

type State =
  | { readonly at: 'opening' | 'grading' }
  | { readonly at: 'playing'; readonly take: StartedTake; readonly since: number }
  | { readonly at: 'fault'; readonly sentence: string };

/** One take from the press to its result: microphone, count-in, playing, grading. */
export function TakeFlow({ sheet, rising, click, guessFirst, discomfort, leave }: Props) {
  const [state, setState] = useState<State>({ at: 'opening' });
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const [plan] = useState(() => planClicks(sheet, clickOptions(click)));
  const stop = useRef<() => void>(() => undefined);
  const control = useRef<SilenceControl | null>(null);
  const holding = click.silence === 'holding';
  const watch = useRef<BreakdownWatch | null>(null);
  const [broke, setBroke] = useState<Breakdown | null>(null);
  const [covered, setCovered] = useState(false);
  const told = useRef<(strokes: readonly LiveStroke[]) => void>(() => undefined);

  useEffect(() => {
    // Loaded while the take is played, so that it is there when it ends.
    sharedEngine().warmUp();
    void import('../result/result-view.tsx');
    let gone = false;
    let ending = false;
    let started: StartedTake | null = null;
    const from = Date.now();
    const name = takeName(new Date(from));
    const finish = async () => {
      if (started === null || ending) return;
      ending = true;
      setState({ at: 'grading' });
      try {
        const recorded = await started.stop();
        notePlayed({ from, to: Date.now() });
        const graded = await gradeRecorded(recorded, { sheet, name, guessFirst, discomfort });
        showTake(graded);
      } catch (error) {
        setState({ at: 'fault', sentence: error instanceof Error ? error.message : String(error) });
      }
    };
    stop.current = () => void finish();
    const timer = setInterval(() => {
      control.current?.tick();
      if (started !== null && started.running.now() > plan.duration + after) void finish();
    }, 15);
    void startTake({
      sheet,
      plan,
      volume: click.volume,
      silences: () => control.current?.stretches() ?? [],
      name,
      told:
        click.strokesShown || holding || rising
          ? ({ strokes, heardSeconds }) => {
              if (strokes.length > 0) told.current(strokes);
              const times = strokes.map(({ time }) => time);
              control.current?.hear(times, heardSeconds);
              const course = watch.current?.hear(strokes, heardSeconds);
              setBroke(course?.broke ?? null);
              setCovered(course?.covered ?? false);
            }
          : undefined,
      // The meter itself says that it is too loud.
      trouble: ({ code, sentence }) => code !== 'clipped' && setTroubles((old) => [...old, sentence]),
      ended: () => void finish(),
    }).then((take) => {
      if (typeof take === 'string') return setState({ at: 'fault', sentence: take });
      started = take;
      const { running, position } = take;
      if (holding)
        control.current = silenceControl({
          sheet,
          plan,
          volume: click.volume,
          position,
          setVolume: running.setVolume,
        });
      if (rising) watch.current = breakdownWatch({ sheet, plan, position });
      if (gone) return void take.running.discard().then(take.stop);
      setState({ at: 'playing', take, since: from });
    });
    return () => {
      gone = true;
      clearInterval(timer);
      if (started !== null && !ending) void finish();
    };
  }, []);

  switch (state.at) {
    case 'opening':
      return <p class="wait">Opening the microphone … Allow it if the browser asks.</p>;
    case 'grading':
      return (
        <p class="wait" role="status">
          Listening to what you played …
        </p>
      );
    case 'fault':
      return (
        <div class="wait">
          <p class="fault" role="alert">
            {state.sentence}
          </p>
          <button type="button" class="main" onClick={leave}>
            Back
          </button>
        </div>
      );
    case 'playing': {
      const { running } = state.take;
      return (
        <PlayingPanel
          sheet={sheet}
          rising={rising}
          plan={plan}
          now={running.now}
          stop={() => stop.current()}
          silent={control.current?.silent}
        >
          {broke !== null && (
            <BreakdownNote
              why={broke.why}
              bpm={sheet.lines[broke.line]!.bpm!}
              stop={() => stop.current()}
              goOn={() => {
                watch.current = null;
                setBroke(null);
              }}
            />
          )}
          {covered && broke === null && <CoveredNote />}
          <RestNote playingSince={state.since} />
          <LevelMeter read={running.levels} />
          {click.strokesShown && (
            <HeardStrip
              listen={(tell) => {
                told.current = tell;
              }}
            />
          )}
          {troubles.length > 0 && (
            <ul class="fault" role="alert">
              {troubles.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          )}
        </PlayingPanel>
      );
    }
  }
}
