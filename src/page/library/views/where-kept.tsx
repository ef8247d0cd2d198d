import { useEffect, useState } from 'preact/hooks';
import { type LibraryHome, libraryHome } from '../library-home.ts';

/** Where takes are kept, or null until that is known. */
export function useHome(): LibraryHome | null {
  const [home, setHome] = useState<LibraryHome | null>(null);
  useEffect(() => {
    void libraryHome().then(setHome);
  }, []);
  return home;
}

/** Says whether takes lie in this browser or in a folder of this computer. */
export function WhereKept() {
  const home = useHome();
  if (home === null) return <p class="quiet where-kept">One moment …</p>;
  if (home.kind === 'browser') return <p class="quiet where-kept">These takes are kept in this browser.</p>;
  return (
    <p class="quiet where-kept">
      These takes are kept on this computer, in the folder <code>{home.folder}</code>.
    </p>
  );
}
