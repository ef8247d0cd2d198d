import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { somethingKept } from '../library/something-kept.ts';

/**
 * A part that speaks of what is kept: nothing of it loads or shows before there is a library, which is looked for again
 * whenever `on` changes.
 */
export function whenKept<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props & { readonly on?: unknown }> {
  let loaded: ComponentType<Props> | undefined;
  return function WhenKept(props: Props & { readonly on?: unknown }) {
    const [Part, setPart] = useState<ComponentType<Props> | undefined>(() => loaded);
    useEffect(() => {
      if (Part !== undefined) return;
      void somethingKept().then(
        async (kept) => {
          if (!kept) return;
          loaded = await load();
          setPart(() => loaded);
        },
        () => undefined,
      );
    }, [props.on]);
    return Part === undefined ? null : <Part {...props} />;
  };
}
