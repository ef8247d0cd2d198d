/**
 * Parts that a narrow screen folds away, but those that come first. On paper all of them are open, and one that a link
 * leads into opens.
 */
export function foldOnNarrow(narrow: MediaQueryList): void {
  const folds = () => [...document.querySelectorAll<HTMLDetailsElement>('details.fold')];
  const settle = () => {
    for (const one of folds()) one.open = !narrow.matches || one.hasAttribute('data-first');
  };
  let closed: HTMLDetailsElement[] = [];
  addEventListener('beforeprint', () => {
    closed = folds().filter((one) => !one.open);
    for (const one of closed) one.open = true;
  });
  addEventListener('afterprint', () => {
    for (const one of closed) one.open = false;
  });
  const reveal = () => {
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    const fold = target?.closest<HTMLDetailsElement>('details.fold');
    if (!target || !fold || fold.open) return;
    fold.open = true;
    target.scrollIntoView();
  };
  addEventListener('hashchange', reveal);
  narrow.addEventListener('change', settle);
  settle();
  reveal();
}
