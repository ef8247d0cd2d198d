/** The calendar day of a moment where this computer is, `2026-03-09`. */
export function localDay(moment: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** Day and time of a moment where this computer is, `2026-03-09 18:05`. */
export function localTime(ms: number): string {
  const moment = new Date(ms);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${localDay(moment)} ${two(moment.getHours())}:${two(moment.getMinutes())}`;
}
