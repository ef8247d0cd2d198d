import { useEffect, useRef } from 'preact/hooks';

/** What a space bar and page-turning pedals send. */
const keys = [' ', 'Enter', 'PageDown'];

/** What has its own use for these keys. */
const taken = 'input, select, textarea, button, a, summary, audio, iframe, [tabindex]:not(main)';

/**
 * Calls `press` when the space bar or a pedal is pressed. While `all` holds (a take is running) whatever has the focus;
 * otherwise only where nothing that the keys belong to has it.
 */
export function useStartStopKeys(press: () => void, all: boolean): void {
  const latest = useRef(press);
  latest.current = press;
  useEffect(() => {
    const take = (event: KeyboardEvent) => {
      if (!keys.includes(event.key) || event.altKey || event.ctrlKey || event.metaKey) return;
      if (!all && event.target instanceof Element && event.target.closest(taken) !== null) return;
      event.preventDefault();
      event.stopPropagation();
      if (!event.repeat) latest.current();
    };
    addEventListener('keydown', take, true);
    return () => removeEventListener('keydown', take, true);
  }, [all]);
}
