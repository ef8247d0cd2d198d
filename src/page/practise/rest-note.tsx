import { useEffect, useState } from 'preact/hooks';
import { restDue } from '../../core/progress/rest-due.ts';
import { playedLately } from './play-time.ts';

/** ms between two looks at the clock. */
const often = 20_000;

/** A reminder to rest once most of an hour was played, a take that goes on since `playingSince` (ms) counted. */
export function RestNote({ playingSince }: { readonly playingSince?: number }) {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), often);
    return () => clearInterval(timer);
  }, []);
  const running = playingSince === undefined ? [] : [{ from: playingSince, to: now }];
  return (
    <p class="rest-note" role="status">
      {restDue([...playedLately(now), ...running], now) &&
        "You have played for most of an hour: ten minutes' rest does hands and ears good."}
    </p>
  );
}
