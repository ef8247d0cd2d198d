import { useEffect, useRef, useState } from 'preact/hooks';
import type { LibraryClient } from '../../../library/library-calls.ts';
import { sharedEngine } from '../../engine/shared-engine.ts';
import { GuessAnswer } from '../../result/guess-answer.tsx';
import { PrintHint } from '../../shell/print-hint.tsx';
import { goTo } from '../../shell/route.ts';
import { faultInWords } from '../fault-words.ts';
import { saveFile } from '../save-file.ts';
import { dayInWords, playedInWords, scoreInWords, tempoInWords, timeInWords } from '../take-words.ts';
import { DeleteTakes } from './delete-takes.tsx';
import { ExportTakes } from './export-takes.tsx';
import { TakeNotes } from './take-notes.tsx';
import { TakeRemarks } from './take-remarks.tsx';
import { useLibrary } from './use-library.ts';
import { useReportRemarks } from './use-report-remarks.ts';

const opened = (id: string) => async (library: LibraryClient) => ({
  ...(await library.readTake(id)),
  people: await library.listPeople(),
});

/** A take that is kept: its report with sound, remarks, and what can be done with it. */
export function TakeView({ id }: { readonly id: string }) {
  const { value, fault, again } = useLibrary(opened(id), [id]);
  const sound = useLibrary(async (library) => ({ bytes: await library.readAudio(id) }), [id]);
  const [html, setHtml] = useState<string | null>(null);
  const [reportFault, setReportFault] = useState<string | null>(null);
  const frame = useRef<HTMLIFrameElement>(null);
  const { wanted, takesRemarks, playFrom } = useReportRemarks(frame);
  const ready = value !== null && (sound.value !== null || sound.fault !== null);
  useEffect(() => {
    if (!ready) return;
    let current = true;
    const bytes = sound.value?.bytes ?? null;
    sharedEngine()
      .report(value.result, bytes === null ? null : { bytes })
      .then(
        (text) => current && setHtml(text),
        (error) => current && setReportFault(faultInWords(error)),
      );
    return () => {
      current = false;
    };
  }, [ready, id]);

  const back = (
    <p>
      <a href="#/takes">All my takes</a>
    </p>
  );
  if (fault !== null) {
    return (
      <>
        <h1>A take</h1>
        <p class="fault" role="alert">
          {fault}
        </p>
        {back}
      </>
    );
  }
  if (value === null) return <p class="quiet">One moment …</p>;
  const { take, remarks, people, guess, result } = value;
  return (
    <div class="kept-take">
      {back}
      <h1>{playedInWords(take)}</h1>
      <p>
        {dayInWords(take.day)}, {timeInWords(take.recordedAt)}
        {take.personName === null ? '' : `, ${take.personName}`}; {tempoInWords(take)};{' '}
        <strong>{scoreInWords(take)}</strong>
      </p>
      <div class="actions">
        <ExportTakes label="Export" takes={async () => [take]} />
        <button
          type="button"
          disabled={html === null}
          onClick={() => saveFile(`${take.day}-report.html`, new Blob([html!], { type: 'text/html' }))}
        >
          Save the report
        </button>
        <button
          type="button"
          disabled={html === null || !take.graded}
          // The report stands by itself and prints itself.
          onClick={() => frame.current?.contentWindow?.postMessage('print', '*')}
        >
          Print
        </button>
        <a class="button" href={`#/compare/${id}`}>
          Compare
        </a>
        <DeleteTakes ids={[id]} deleted={() => goTo('takes')} />
      </div>
      {guess !== null && <GuessAnswer result={result} guess={guess} />}
      {sound.fault !== null && (
        <p class="fault" role="alert">
          {sound.fault}
        </p>
      )}
      <TakeNotes take={take} people={people} changed={again} />
      <TakeRemarks
        takeId={id}
        remarks={remarks}
        duration={take.duration}
        wanted={wanted}
        play={sound.value?.bytes && html !== null ? playFrom : null}
        changed={again}
      />
      {reportFault !== null && (
        <p class="fault" role="alert">
          {reportFault}
        </p>
      )}
      {html === null ? (
        <p class="quiet">{reportFault === null ? 'The report is being made …' : ''}</p>
      ) : (
        <>
          <PrintHint button="Print" />
          <iframe
            ref={frame}
            class="report"
            title="Report on the take"
            sandbox="allow-scripts allow-downloads allow-modals"
            allow="autoplay"
            srcdoc={html}
            onLoad={takesRemarks}
          />
        </>
      )}
    </div>
  );
}
