import { findExercise } from '../../core/exercise/catalogue.ts';
import type { Sheet, SheetLine } from '../../core/exercise/sheet.ts';
import { secondsOf } from './practise-choice.ts';
import { lineNotation } from './sheet-notation.ts';

/** Lines that are drawn; a longer sheet is counted on. */
const linesShown = 12;

/** The lines to play, in notation, and how long they take. */
export function SheetPreview({ sheet, rising }: { readonly sheet: Sheet; readonly rising: boolean }) {
  const { lines, title } = sheet;
  if (rising) return <Rising sheet={sheet} />;
  const left = lines.length - linesShown;
  return (
    <div class="preview">
      {lines.length > 1 && <p class="strong">{title}</p>}
      {lines.slice(0, linesShown).map((line, i) => (
        <Line key={`${i} ${line.notation}`} line={line} alone={lines.length === 1} />
      ))}
      {left > 0 && <p class="quiet">And {left} more lines.</p>}
      <p class="quiet">{`Lasts ${spoken(secondsOf(sheet))}.`}</p>
    </div>
  );
}

/** One exercise whose tempo rises: its notes once, and the tempos. */
function Rising({ sheet }: { readonly sheet: Sheet }) {
  const { lines, title } = sheet;
  const tempos = lines.map(({ bpm }) => bpm).join(', ');
  const { repeats } = lines[0]!;
  return (
    <div class="preview">
      <Line line={{ ...lines[0]!, label: title }} alone={true} />
      <p>{`${repeats === 1 ? 'Once' : `${repeats} times`} at each of ${lines.length} tempos: ${tempos}.`}</p>
      <p class="quiet">{`Lasts ${spoken(secondsOf(sheet))} if you get to the end.`}</p>
    </div>
  );
}

function Line({ line, alone }: { readonly line: SheetLine; readonly alone: boolean }) {
  const { label, repeats, bpm, restBeats, leadChange } = line;
  const about = findExercise(line.id)?.description;
  const facts = [
    repeats === 1 ? 'once' : `${repeats} times`,
    ...(bpm === null ? [] : [`at ${bpm}`]),
    ...(leadChange ? ['hands change over every second time'] : []),
    ...(restBeats > 0 ? [`then ${restBeats} beats of rest`] : []),
  ];
  return (
    <>
      <p class="line-name">
        <strong>{label}</strong>
        {alone ? '' : `, ${facts.join(', ')}`}
      </p>
      {alone && about !== undefined && <p class="quiet">{about}</p>}
      {/* Signs and hands only: no text that a person wrote. */}
      <div dangerouslySetInnerHTML={{ __html: lineNotation(line) }} />
    </>
  );
}

function spoken(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 90) return `${whole} seconds`;
  const minutes = Math.floor(whole / 60);
  const rest = whole % 60;
  return rest === 0 ? `${minutes} minutes` : `${minutes} min ${rest} s`;
}
