import './takes.css';
import type { Route } from '../../shell/route.ts';
import { TakeView } from './take-view.tsx';
import { TakesListView } from './takes-list-view.tsx';

/** `#/takes` is the list of takes, `#/takes/…` one of them. */
export function TakesView({ route: { parts } }: { readonly route: Route }) {
  const [id] = parts;
  return id === undefined ? <TakesListView /> : <TakeView key={id} id={id} />;
}
