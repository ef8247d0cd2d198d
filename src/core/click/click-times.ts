/** Clicks that sound alike, as they were put out: when each of them began, s of the recording, before any delay. */
export interface ClickTimes {
  readonly kind: string;
  /** In order. */
  readonly times: readonly number[];
}
