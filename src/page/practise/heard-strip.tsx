import { useEffect, useState } from 'preact/hooks';
import type { LiveStroke } from '../../core/onsets/live-strokes.ts';

/** Strokes shown, newest at the right. */
const shown = 32;

/** dB from the tallest bar to none. */
const range = 40;

const [width, height, step] = [320, 64, 10];

/** The strokes heard last, as bars by their loudness; where they lie in the beat only the grading tells. */
export function HeardStrip({
  listen,
}: {
  readonly listen: (tell: (strokes: readonly LiveStroke[]) => void) => void;
}) {
  const [strokes, setStrokes] = useState<readonly LiveStroke[]>([]);
  const [count, setCount] = useState(0);
  useEffect(
    () =>
      listen((more) => {
        setStrokes((old) => [...old, ...more].slice(-shown));
        setCount((old) => old + more.length);
      }),
    [],
  );
  const loudest = Math.max(-30, ...strokes.map(({ levelDb }) => levelDb));
  return (
    <figure class="heard">
      <figcaption class="quiet">Strokes heard: {count}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <path d={`M0 ${height - 1}H${width}`} class="line" />
        {strokes.map(({ time, levelDb }, i) => {
          const tall = Math.max(3, height * (1 - (loudest - levelDb) / range));
          const x = width - (strokes.length - i) * step;
          return <rect key={time} x={x} y={height - tall} width={step - 4} height={tall} />;
        })}
      </svg>
    </figure>
  );
}
