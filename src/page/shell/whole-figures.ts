import { Fragment, options } from 'preact';
import { wholeFigures } from '../../core/result/whole-figures.ts';

/** What is shown, or sent on, letter by letter. */
const asTyped = ['code', 'pre', 'textarea'];

/**
 * What stands in an element, with no figure parted from its unit, also where the two come one after the other: `{bpm} BPM`.
 *
 * @example wholeChildren([92, ' BPM']) // the same with a no-break space
 */
export function wholeChildren(children: unknown): unknown {
  if (typeof children === 'string') return wholeFigures(children);
  if (!Array.isArray(children)) return children;
  return children.map((child: unknown, i) => {
    if (typeof child !== 'string') return wholeChildren(child);
    const before: unknown = children[i - 1];
    const last = typeof before === 'number' || typeof before === 'string' ? String(before).slice(-1) : '';
    return wholeFigures(last + child).slice(last.length);
  });
}

/** Has every element of the page keep its figures whole, whoever writes them. */
export function keepFiguresWhole(): void {
  const earlier = options.vnode;
  options.vnode = (vnode) => {
    const { type, props } = vnode;
    if (type === Fragment || (typeof type === 'string' && !asTyped.includes(type)))
      Object.assign(props, { children: wholeChildren(props.children) });
    earlier?.(vnode);
  };
}
