import { useState } from 'preact/hooks';
import { settingRanges } from '../../core/exercise/line-settings.ts';
import { TapTempo } from './tap-tempo.tsx';

interface Props {
  readonly bpm: number;
  readonly set: (bpm: number) => void;
}

const { least, most } = settingRanges.tempo;
const held = (bpm: number) => Math.min(most, Math.max(least, bpm));

/** The tempo: written, one up or down, or beaten in. */
export function TempoField({ bpm, set }: Props) {
  // While a number is being written, 1 of 120 is no tempo yet.
  const [writing, setWriting] = useState<string | null>(null);
  const write = (text: string) => {
    setWriting(text);
    const value = Number(text.replace(',', '.'));
    if (text.trim() !== '' && value >= least && value <= most) set(value);
  };
  const step = (by: number) => {
    setWriting(null);
    set(held(Math.round(bpm) + by));
  };
  return (
    <fieldset class="tempo">
      <legend>Tempo, beats a minute</legend>
      <div class="tempo-row">
        <button type="button" aria-label="Slower by 1" onClick={() => step(-1)}>
          −
        </button>
        <input
          type="text"
          inputMode="decimal"
          size={5}
          aria-label="Beats per minute"
          value={writing ?? `${bpm}`}
          onInput={({ currentTarget }) => write(currentTarget.value)}
          onBlur={() => setWriting(null)}
        />
        <button type="button" aria-label="Faster by 1" onClick={() => step(1)}>
          +
        </button>
        <TapTempo
          set={(tapped) => {
            setWriting(null);
            set(held(tapped));
          }}
        />
      </div>
    </fieldset>
  );
}
