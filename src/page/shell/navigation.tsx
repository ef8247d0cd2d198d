import { useEffect } from 'preact/hooks';
import type { Route } from './route.ts';
import { viewOf, views } from './views.ts';

/** The header: the page's name and the ways to its views. */
export function Navigation({ route }: { readonly route: Route }) {
  const { title, name: own, under = own } = viewOf(route);
  useEffect(() => {
    document.title = `${title} – Evenhand`;
  }, [title]);
  return (
    <header class="page-head">
      <a class="brand" href="#/">
        <svg viewBox="0 0 40 28" width="40" height="28" aria-hidden="true">
          <path d="M2 25H38M9 24V10M20 24V10M31 24V10" />
          <path class="beam" d="M8 10H32" />
          <path class="sign" d="M6 1L12 3.5L6 6" />
        </svg>
        <span class="brand-name">Evenhand</span>
      </a>
      <nav aria-label="Parts of the page">
        {views
          .filter((view) => view.inNavigation)
          .map(({ name, title: to }) => (
            <a key={name} href={`#/${name}`} {...(under === name ? { 'aria-current': 'page' as const } : {})}>
              {to}
            </a>
          ))}
      </nav>
    </header>
  );
}
