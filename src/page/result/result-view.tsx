import { useEffect, useState } from 'preact/hooks';
import { sharedEngine } from '../engine/shared-engine.ts';
import { onShownTake, shownTake } from './shown-take.ts';

/** The report on a take. */
export function ResultView() {
  const [take, setTake] = useState(shownTake);
  const [html, setHtml] = useState<string | null>(null);
  useEffect(() => onShownTake(() => setTake(shownTake())), []);
  useEffect(() => {
    setHtml(null);
    if (take === null) return;
    let current = true;
    void sharedEngine()
      .report(take.result, take.sound)
      .then((text) => current && setHtml(text));
    return () => {
      current = false;
    };
  }, [take]);
  if (take === null) return <p>No take has been played yet.</p>;
  return (
    <>
      <h1>The take</h1>
      {html === null ? (
        <p>One moment …</p>
      ) : (
        <iframe
          class="report"
          title="Report on the take"
          sandbox="allow-scripts allow-downloads allow-modals"
          srcdoc={html}
        />
      )}
    </>
  );
}
