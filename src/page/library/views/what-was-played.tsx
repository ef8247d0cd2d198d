import { useEffect, useMemo, useState } from 'preact/hooks';
import { writeSheet } from '../../../core/exercise/write-sheet.ts';
import type { ListedSheet } from '../../../library/list-sheets.ts';
import { ChooseExercise } from '../../practise/choose-exercise.tsx';
import { keptChoice } from '../../practise/kept-choice.ts';
import { OwnLines } from '../../practise/own-lines.tsx';
import { chosenSheet, type PractiseChoice, type Way } from '../../practise/practise-choice.ts';
import { SheetFile } from '../../practise/sheet-file.tsx';
import { TempoAndTimes } from '../../practise/tempo-and-times.tsx';
import { Choice } from '../../shell/choice.tsx';

interface Props {
  /** Sheets of takes that are kept, the last one first. */
  readonly sheets: readonly ListedSheet[];
  /** Told the sheet's text, or null while there is none. */
  readonly tell: (sheetText: string | null) => void;
}

type From = Way | 'before';

/** Says what was played in recordings that were made elsewhere. */
export function WhatWasPlayed({ sheets, tell }: Props) {
  const [from, setFrom] = useState<From>(sheets.length > 0 ? 'before' : 'exercise');
  const [before, setBefore] = useState(sheets[0]?.id ?? '');
  const [choice, setChoice] = useState<PractiseChoice>(keptChoice);
  const [tempoOpen, setTempoOpen] = useState(false);
  const change = (part: Partial<PractiseChoice>) => setChoice((old) => ({ ...old, ...part }));
  const chosen = useMemo(
    () => chosenSheet(from === 'before' ? choice : { ...choice, way: from }),
    [choice, from],
  );
  const fault = chosen.ok ? null : chosen.sentence;

  useEffect(() => {
    if (from === 'before') return tell(sheets.find(({ id }) => id === before)?.text ?? null);
    if (!chosen.ok) return tell(null);
    const { title, lines } = chosen.sheet;
    tell(writeSheet({ title, lines: tempoOpen ? lines.map((line) => ({ ...line, bpm: null })) : lines }));
  }, [from, before, chosen, tempoOpen]);

  const ways: readonly { readonly way: From; readonly title: string }[] = [
    ...(sheets.length > 0 ? [{ way: 'before', title: 'As before' } as const] : []),
    { way: 'exercise', title: 'From the list' },
    { way: 'own', title: 'My own' },
    { way: 'sheet', title: 'A sheet' },
  ];
  return (
    <div class="what-was-played">
      <fieldset class="ways">
        <legend>What was played</legend>
        {ways.map(({ way, title }) => (
          <label key={way}>
            <input type="radio" name="played" checked={from === way} onChange={() => setFrom(way)} />
            <span>{title}</span>
          </label>
        ))}
      </fieldset>
      {from === 'before' && (
        <Choice label="As in these takes" value={before} set={setBefore}>
          {sheets.map(({ id, title, text }) => (
            <option key={id} value={id}>
              {title === '' ? text.trim().split('\n').at(-1) : title}
            </option>
          ))}
        </Choice>
      )}
      {from === 'exercise' && (
        <ChooseExercise exercise={choice.exercise} choose={(exercise) => change({ exercise })} />
      )}
      {from === 'own' && <OwnLines text={choice.own} fault={fault} write={(own) => change({ own })} />}
      {from === 'sheet' && (
        <SheetFile sheet={choice.sheet} fault={fault} open={(sheet) => change({ sheet })} />
      )}
      {from !== 'before' && (
        <>
          <TempoAndTimes choice={choice} chosen={chosen} change={change} />
          <label class="tick">
            <input
              type="checkbox"
              checked={tempoOpen}
              onChange={({ currentTarget }) => setTempoOpen(currentTarget.checked)}
            />
            I don't know the tempo: find it in the recording
          </label>
        </>
      )}
    </div>
  );
}
