import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A view whose code loads when it is first shown. */
export function lazyView<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> {
  let loaded: ComponentType<Props> | undefined;
  return function Lazy(props: Props) {
    const [View, setView] = useState<ComponentType<Props> | undefined>(() => loaded);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (View !== undefined) return;
      load().then(
        (view) => {
          loaded = view;
          setView(() => view);
        },
        () => setFailed(true),
      );
    }, []);
    if (failed)
      return <p role="alert">This part of the page could not be loaded. Load the page again while online.</p>;
    return View === undefined ? <p class="quiet">One moment …</p> : <View {...props} />;
  };
}
