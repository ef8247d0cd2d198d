import { useEffect, useState } from 'preact/hooks';
import type { StorageUse } from '../../../library/storage-use.ts';
import { counted, roomInWords } from '../take-words.ts';
import { useHome } from './where-kept.tsx';

interface Props {
  readonly use: StorageUse;
}

type Promised = 'yes' | 'no' | 'refused' | 'unknown';

/** What the takes take up, and whether the browser has promised to keep them. */
export function Room({ use }: Props) {
  const [promised, setPromised] = useState<Promised>('unknown');
  const [left, setLeft] = useState<number | null>(null);
  const home = useHome();
  useEffect(() => {
    if (home?.kind !== 'browser') return;
    void navigator.storage?.persisted?.().then((yes) => setPromised(yes ? 'yes' : 'no'));
    void navigator.storage
      ?.estimate?.()
      .then(({ quota, usage }) => setLeft(quota === undefined ? null : Math.max(0, quota - (usage ?? 0))));
  }, [use, home]);
  const ask = async () => setPromised((await navigator.storage.persist()) ? 'yes' : 'refused');
  return (
    <section class="room" aria-labelledby="room">
      <h2 id="room">Room on this device</h2>
      {home?.kind === 'folder' && (
        <p>
          Keep a copy on another disk now and then. <code>evenhand library backup</code> and the name of an
          empty folder there, typed into a terminal, make one, also while this page is open.
        </p>
      )}
      <p>
        {use.takes === 0
          ? 'Nothing is kept yet.'
          : `${counted(use.takes, 'take')}: ${roomInWords(use.audioBytes)} of recordings and ${roomInWords(use.tableBytes)} of results and remarks.`}
        {left !== null && ` The browser lets this page use about ${roomInWords(left)} more.`}
      </p>
      <div role="status">
        {promised === 'yes' && (
          <p>The browser has promised to keep your takes until you delete them yourself.</p>
        )}
        {promised === 'refused' && (
          <p>
            The browser did not promise it: when the device runs short of room it may clear them away. It
            often agrees once the page is installed or used for a while. Until then, export the takes that
            matter to you.
          </p>
        )}
        {promised === 'no' && (
          <p>
            The browser may clear your takes away when the device runs short of room. Ask it to keep them, and
            export the ones that matter to you.
          </p>
        )}
      </div>
      {(promised === 'no' || promised === 'refused') && (
        <button type="button" onClick={ask}>
          {promised === 'no' ? 'Ask the browser to keep them' : 'Ask again'}
        </button>
      )}
    </section>
  );
}
