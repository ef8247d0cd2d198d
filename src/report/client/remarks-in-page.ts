import { fromBefore } from '../listening/from-before.ts';
import type { ListeningTake } from '../listening/listening-take.ts';

interface Heard {
  readonly take: ListeningTake;
  /** Moment of the take that is heard, or would be next, s. */
  readonly moment: () => number;
  readonly play: (time: number) => void;
}

/** What the report tells the page around it: a remark is wanted at this moment of the take, s. */
export interface RemarkWanted {
  readonly remarkAt: number;
}

/**
 * Where the page that shows the report says that it takes remarks: a button hands it the moment that is heard, and it
 * may have a moment played. Alone, or inside what doesn't ask, the report offers nothing of it.
 */
export function remarksInPage({ take, moment, play }: Heard): void {
  const button = document.querySelector<HTMLButtonElement>('#listen-remark');
  if (button === null || parent === window) return;
  addEventListener('message', ({ data, source }) => {
    if (source !== parent) return;
    if (data === 'remarks') button.hidden = false;
    const from: unknown = data?.playFrom;
    if (typeof from === 'number' && from >= 0) play(fromBefore(take, from));
  });
  button.addEventListener('click', () => {
    const wanted: RemarkWanted = { remarkAt: moment() };
    parent.postMessage(wanted, '*');
  });
}
