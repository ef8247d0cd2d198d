import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ClickPlan } from '../../core/click-track/click-plan.ts';
import type { Sheet } from '../../core/exercise/sheet.ts';
import { useStartStopKeys } from '../shell/start-stop-keys.ts';
import { type Place, placeAt } from './place-at.ts';
import { lineNotation } from './sheet-notation.ts';

interface Props {
  readonly sheet: Sheet;
  /** The tempo rises from line to line, and is what is shown big. */
  readonly rising?: boolean;
  readonly plan: ClickPlan;
  /** s since the click track began, as it is heard. */
  readonly now: () => number;
  readonly stop: () => void;
  /** Whether the click is held back just now, where that isn't in the plan. */
  readonly silent?: (() => boolean) | undefined;
  /** The meter and what it warns of. */
  readonly children?: ComponentChildren;
}

/** What is on the screen while a take is played: where one is, the notes, the meter, and the button that ends it. */
export function PlayingPanel({ sheet, rising = false, plan, now, stop, silent, children }: Props) {
  const place = useFrames(() => {
    const at = placeAt(sheet, plan, now());
    return at.phase === 'play' && silent?.() ? { ...at, silent: true } : at;
  });
  useStartStopKeys(stop, true);
  const lineIndex = 'line' in place ? place.line - 1 : place.phase === 'over' ? sheet.lines.length - 1 : 0;
  const coming = place.phase === 'rest' ? Math.min(lineIndex + 1, sheet.lines.length - 1) : lineIndex;
  const line = sheet.lines[coming]!;
  const notes = useMemo(() => lineNotation(line), [line]);
  return (
    <div class="playing">
      <p class="unseen" role="status">
        {place.phase === 'count-in'
          ? 'Counting in'
          : place.phase === 'over'
            ? 'The exercise is over'
            : 'Recording'}
      </p>
      <p class="big-count" aria-hidden="true">
        {rising && place.phase === 'play' ? line.bpm : countOf(place)}
      </p>
      <p class="where">
        {rising
          ? `Beats a minute: ${line.bpm}, tempo ${coming + 1} of ${sheet.lines.length}`
          : sheet.lines.length > 1 && `Line ${coming + 1} of ${sheet.lines.length}: `}
        {!rising && <strong>{line.label}</strong>}
        {place.phase === 'play' && line.repeats > 1 && `, time ${place.repeat} of ${line.repeats}`}
      </p>
      <p class="quiet">{wordsOf(place)}</p>
      <div dangerouslySetInnerHTML={{ __html: notes }} />
      {children}
      <button type="button" class="main stop" onClick={stop}>
        ■ Stop
      </button>
      <p class="quiet">The space bar or a pedal stops, too.</p>
    </div>
  );
}

function countOf(place: Place): string {
  if (place.phase === 'count-in') return place.beat === 0 ? '·' : `${place.beat}`;
  if (place.phase === 'play') return `${place.beat}`;
  return place.phase === 'rest' ? `− ${place.beatsLeft}` : '✓';
}

function wordsOf(place: Place): string {
  switch (place.phase) {
    case 'count-in':
      return `Counting in, ${place.of} beats. Then play.`;
    case 'rest':
      return 'Rest. The next line comes.';
    case 'over':
      return 'That was the last beat.';
    case 'play':
      return place.silent ? 'The click is silent: keep the beat.' : 'Play.';
  }
}

/** A value worked out for each frame of the screen; drawn anew only where it changes. */
function useFrames<Value>(read: () => Value): Value {
  const [value, setValue] = useState(read);
  useEffect(() => {
    let shown = JSON.stringify(value);
    let frame = requestAnimationFrame(function tick() {
      const next = read();
      const text = JSON.stringify(next);
      if (text !== shown) setValue(next);
      shown = text;
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, []);
  return value;
}
