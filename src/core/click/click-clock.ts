/** When a click that was put out at `t` is heard, s: `delay + rate · t`. */
export interface ClickClock {
  readonly delay: number;
  readonly rate: number;
}

/** A click read in the recording: when it was put out and when it is heard, s. */
export interface ClickReading {
  readonly put: number;
  readonly time: number;
}

/**
 * How much faster a loudspeaker's clock may run than a microphone's, and to what the time of a click is read (s): few
 * readings close together say little of the rate. Common practice for crystals: 50 parts in a million.
 */
const rateSd = 50e-6;
const readingSd = 1e-5;

export const timeOn = ({ delay, rate }: ClickClock, put: number): number => delay + rate * put;

/**
 * Least-squares line through readings, drawn to a rate of 1 as strongly as clocks are alike.
 *
 * @example fitClock([{ put: 0, time: 0.1 }, { put: 10, time: 10.1 }]) // { delay: 0.1, rate: 1 }
 */
export function fitClock(readings: readonly ClickReading[]): ClickClock {
  const mean = (of: (reading: ClickReading) => number) =>
    readings.reduce((sum, reading) => sum + of(reading), 0) / readings.length;
  const put = mean((reading) => reading.put);
  const later = mean((reading) => reading.time - reading.put);
  let squares = (readingSd / rateSd) ** 2;
  let products = 0;
  for (const reading of readings) {
    squares += (reading.put - put) ** 2;
    products += (reading.put - put) * (reading.time - reading.put - later);
  }
  const rate = 1 + products / squares;
  return { delay: later + put - rate * put, rate };
}
