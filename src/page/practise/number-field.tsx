import { useState } from 'preact/hooks';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly set: (value: number) => void;
}

/** A whole number, written or one up or down. */
export function NumberField({ label, value, least, most, set }: Props) {
  const [writing, setWriting] = useState<string | null>(null);
  const step = (by: number) => {
    setWriting(null);
    set(Math.min(most, Math.max(least, value + by)));
  };
  const write = (text: string) => {
    setWriting(text);
    const number = Number(text);
    if (/^\d+$/.test(text.trim()) && number >= least && number <= most) set(number);
  };
  return (
    <fieldset class="number">
      <legend>{label}</legend>
      <div class="tempo-row">
        <button type="button" aria-label={`${label}: one less`} onClick={() => step(-1)}>
          −
        </button>
        <input
          type="text"
          inputMode="numeric"
          size={4}
          aria-label={label}
          value={writing ?? `${value}`}
          onInput={({ currentTarget }) => write(currentTarget.value)}
          onBlur={() => setWriting(null)}
        />
        <button type="button" aria-label={`${label}: one more`} onClick={() => step(1)}>
          +
        </button>
      </div>
    </fieldset>
  );
}
