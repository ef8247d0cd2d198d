import './takes.css';
import type { ViewProps } from '../../shell/views.ts';
import { TakesListView } from './takes-list-view.tsx';
import { TakeView } from './take-view.tsx';

/** `#/takes` is the list of takes, `#/takes/…` one of them. */
export function TakesView({ route: { parts } }: ViewProps) {
  const [id] = parts;
  return id === undefined ? <TakesListView /> : <TakeView key={id} id={id} />;
}
