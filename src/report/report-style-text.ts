import { listeningStyle } from './listening-style.ts';
import { reportStyle } from './style.ts';
import { firstViewStyle } from './style-first-view.ts';

/** The one style sheet of a report; its digest stands in the report's policy, and in a policy round a shown report. */
export function reportStyleText(fontFaces: string, withSound: boolean): string {
  return reportStyle(fontFaces) + firstViewStyle + (withSound ? listeningStyle : '');
}
