import { useEffect, useRef, useState } from 'preact/hooks';
import type { ShownWeeks } from '../engine/engine-messages.ts';
import { sharedEngine } from '../engine/shared-engine.ts';
import { faultInWords } from '../library/fault-words.ts';
import { saveFile } from '../library/save-file.ts';
import { PrintHint } from '../shell/print-hint.tsx';
import './weeks.css';

interface Props {
  /** What the page on several takes shows; another one is drawn anew. */
  readonly page: ShownWeeks;
  /** What it is, for those who can't see it. */
  readonly title: string;
  /** Name of the file that it is saved as. */
  readonly file: string;
}

/** A page on several takes, as commands write it, inside this one: to look at, to save, to print. */
export function WeekReport({ page, title, file }: Props) {
  const [html, setHtml] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const frame = useRef<HTMLIFrameElement>(null);
  useEffect(() => {
    let current = true;
    setFault(null);
    sharedEngine()
      .weekPage(page)
      .then(
        (text) => current && setHtml(text),
        (error) => current && setFault(faultInWords(error)),
      );
    return () => {
      current = false;
    };
  }, [page]);
  if (fault !== null)
    return (
      <p class="fault" role="alert">
        {fault}
      </p>
    );
  if (html === null) return <p class="quiet">The page is being made …</p>;
  return (
    <>
      <div class="actions">
        <button type="button" onClick={() => saveFile(file, new Blob([html], { type: 'text/html' }))}>
          Save this page
        </button>
        {/* It stands by itself and prints itself. */}
        <button type="button" onClick={() => frame.current?.contentWindow?.postMessage('print', '*')}>
          Print
        </button>
      </div>
      <PrintHint button="Print" />
      <iframe
        ref={frame}
        class="report weeks"
        title={title}
        sandbox="allow-scripts allow-downloads allow-modals"
        srcdoc={html}
      />
    </>
  );
}
