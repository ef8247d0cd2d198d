import { useEffect, useState } from 'preact/hooks';
import { keepOffline } from '../offline/offline.ts';

/** Says that a newer version of the page has come; it takes over when the user says so, never by itself. */
export function NewVersion() {
  const [takeOver, setTakeOver] = useState<(() => void) | null>(null);
  useEffect(() => {
    if (import.meta.env.PROD) void keepOffline((go) => setTakeOver(() => go));
  }, []);
  if (takeOver === null) return null;
  return (
    <p class="band" role="status">
      A newer version of this page is here.{' '}
      <button type="button" onClick={takeOver}>
        Load it now
      </button>
    </p>
  );
}
