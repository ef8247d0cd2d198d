import type { ComponentChildren, ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { lazyView } from '../shell/lazy-view.tsx';
import type { Route } from '../shell/route.ts';
import { HowItWorks } from './how-it-works.tsx';

/** A page made of a file when the page is built; it loads when it is first shown. */
const pageOf = (load: () => Promise<{ readonly default: string }>) =>
  lazyView(async () => {
    const { default: html } = await load();
    return ({ anchor }: { readonly anchor?: string }) => (
      <AtAnchor anchor={anchor}>
        {/* The files are the project's own. */}
        <article class="help" dangerouslySetInnerHTML={{ __html: html }} />
      </AtAnchor>
    );
  });

const pages: readonly {
  readonly id: string;
  readonly title: string;
  readonly Page: ComponentType<{ readonly anchor?: string }>;
}[] = [
  { id: 'how', title: 'How it works', Page: HowPage },
  { id: 'for-students', title: 'For students', Page: pageOf(() => import('./for-students.md?html')) },
  { id: 'for-teachers', title: 'For teachers', Page: pageOf(() => import('./for-teachers.md?html')) },
  {
    id: 'measures',
    title: 'Every measure',
    Page: pageOf(() => import('../../core/measures/handbook.md?html')),
  },
  { id: 'scores', title: 'Scores', Page: pageOf(() => import('../../core/scoring/scores.md?html')) },
  { id: 'words', title: 'Words', Page: pageOf(() => import('./glossary.md?html')) },
];

function HowPage({ anchor }: { readonly anchor?: string }) {
  return (
    <AtAnchor anchor={anchor}>
      <HowItWorks />
    </AtAnchor>
  );
}

/** Shows what is in it from the heading that the address names, or from the top. */
function AtAnchor({
  anchor,
  children,
}: {
  readonly anchor?: string | undefined;
  readonly children: ComponentChildren;
}) {
  useEffect(() => {
    const place = anchor === undefined ? null : document.getElementById(anchor);
    if (place === null) scrollTo(0, 0);
    else place.scrollIntoView();
  }, [anchor]);
  return <>{children}</>;
}

/** The help: how it works, the guides, the measures, the scores and the words. */
export function HelpView({ route }: { readonly route: Route }) {
  const [name, anchor] = route.parts;
  const { id, Page } = pages.find((page) => page.id === name) ?? pages[0]!;
  return (
    <>
      <nav class="help-pages" aria-label="Pages of the help">
        {pages.map((page) => (
          <a key={page.id} href={`#/help/${page.id}`} {...(page.id === id ? { 'aria-current': 'page' } : {})}>
            {page.title}
          </a>
        ))}
      </nav>
      <Page key={id} {...(anchor === undefined ? {} : { anchor })} />
    </>
  );
}
