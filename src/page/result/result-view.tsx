import { useEffect, useRef, useState } from 'preact/hooks';
import type { GuessAnswers } from '../../core/progress/guess-truth.ts';
import { sharedEngine } from '../engine/shared-engine.ts';
import { saveFile } from '../library/save-file.ts';
import { RestNote } from '../practise/rest-note.tsx';
import { goTo } from '../shell/route.ts';
import { BreakingAnswer } from './breaking-answer.tsx';
import { GuessAnswer } from './guess-answer.tsx';
import { GuessForm } from './guess-form.tsx';
import { GuessRecords } from './guess-records.tsx';
import { keepGuessOf } from './keep-guess.ts';
import { onShownTake, shownTake } from './shown-take.ts';
import { wanderInWords } from './silent-wander.ts';
import { tempoAdviceOf, verdict } from './verdict.ts';

/** A take's verdict in one line, what can be done with it, and the whole report. */
export function ResultView() {
  const [take, setTake] = useState(shownTake);
  const [html, setHtml] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [kept, setKept] = useState<string | null>(null);
  const [lost, setLost] = useState<string | null>(null);
  const [guess, setGuess] = useState<GuessAnswers | null>(null);
  const [guessKept, setGuessKept] = useState(false);
  const [asking, setAsking] = useState(take?.guessFirst ?? false);
  const frame = useRef<HTMLIFrameElement>(null);
  useEffect(() => onShownTake(() => setTake(shownTake())), []);
  useEffect(() => {
    setHtml(null);
    setFault(null);
    setKept(null);
    setLost(null);
    setGuess(null);
    setGuessKept(false);
    setAsking(take?.guessFirst ?? false);
    if (take === null) return;
    let current = true;
    sharedEngine()
      .report(take.result, take.sound)
      .then(
        (text) => current && setHtml(text),
        (error: Error) => current && setFault(error.message),
      );
    void take.kept.then((id) => current && setKept(id));
    void take.fault?.then((sentence) => current && setLost(sentence));
    return () => {
      current = false;
    };
  }, [take]);

  if (take === null)
    return (
      <>
        <h1>No take yet</h1>
        <p>Play one first, or open one that you kept.</p>
        <p>
          <a class="button main" href="#/">
            Practise
          </a>
        </p>
      </>
    );
  const { result } = take;
  if (asking)
    return (
      <GuessForm
        result={result}
        done={(given) => {
          setGuess(given);
          setAsking(false);
          if (given !== null) void keepGuessOf(take, given).then(setGuessKept, () => undefined);
        }}
      />
    );
  const name = result.recording.name.replace(/\.\w{1,4}$/, '');
  const tempo = tempoAdviceOf(result);
  const silent = wanderInWords(result);
  return (
    <div class="result">
      <div class="result-bar">
        <h1 class="unseen">{result.sheet.title || 'The take'}</h1>
        <p class="result-verdict" role="status">
          <strong>{verdict(result)}</strong> <span class="wide-only">{tempo}</span>
        </p>
        {result.breaking?.length === 1 && <BreakingAnswer breaking={result.breaking[0]!} />}
        {silent !== null && <p>{silent}</p>}
        {guess !== null && <GuessAnswer result={result} guess={guess} />}
        {guessKept && <GuessRecords folded />}
        <RestNote />
        <div class="buttons">
          <button type="button" class="main" onClick={() => goTo('')}>
            Practise again
          </button>
          <button
            type="button"
            disabled={html === null}
            onClick={() => saveFile(`${name}.html`, new Blob([html!], { type: 'text/html' }))}
          >
            {'Save'}
            <span class="wide-only">{'\u00a0the report'}</span>
          </button>
          <button
            type="button"
            disabled={html === null || result.grading.state !== 'graded'}
            // The report stands by itself and prints itself.
            onClick={() => frame.current?.contentWindow?.postMessage('print', '*')}
          >
            Print
          </button>
          <span class="quiet" role="status">
            {kept !== null && <a href={`#/takes/${encodeURIComponent(kept)}`}>Kept in My takes</a>}
            {lost}
          </span>
        </div>
      </div>
      {fault !== null && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      {html === null ? (
        fault === null && <p class="quiet">Drawing the report …</p>
      ) : (
        <iframe
          ref={frame}
          class="report"
          title="The report on this take"
          sandbox="allow-scripts allow-downloads allow-modals"
          srcdoc={html}
        />
      )}
    </div>
  );
}
