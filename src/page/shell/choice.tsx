import type { ComponentChildren } from 'preact';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  /** Options. */
  readonly children: ComponentChildren;
}

/** A choice of one from a short list, under its name. */
export function Choice({ label, value, set, children }: Props) {
  return (
    <label class="field">
      <span>{label}</span>
      <select value={value} onChange={({ currentTarget }) => set(currentTarget.value)}>
        {children}
      </select>
    </label>
  );
}
