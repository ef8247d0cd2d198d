interface Props {
  readonly label: string;
  readonly day: string;
  /** The last day that can be chosen. */
  readonly today: string;
  readonly choose: (day: string) => void;
}

/** The day that something was on, up to today. */
export function DayField({ label, day, today, choose }: Props) {
  return (
    <label class="field">
      <span>{label}</span>
      <input
        type="date"
        max={today}
        value={day}
        onChange={({ currentTarget }) => choose(currentTarget.value)}
      />
    </label>
  );
}
