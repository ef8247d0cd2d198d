import { measureList } from './names.ts';
import { type Facts, type SentenceTable, textOf } from './sentence-table.ts';
import { adviceSentences } from './sentences-advice.ts';
import { alignmentSentences } from './sentences-alignment.ts';
import { cannotTellSentences } from './sentences-cannot-tell.ts';
import { checkSentences, spoiledSentences, spoiltSentence } from './sentences-check.ts';
import { measureSentences } from './sentences-measures.ts';
import { takeSentences } from './sentences-take.ts';
import type { RecordingFinding } from './take-result.ts';

/** All sentences by code; tables of other parts are added here. */
const tables: readonly SentenceTable[] = [
  adviceSentences,
  cannotTellSentences,
  alignmentSentences,
  takeSentences,
  measureSentences,
  checkSentences,
  spoiledSentences,
];

const upperFirst = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The refused measures' names, then the sentence of the reason they share. */
function notMeasured(facts: Facts): string {
  const shown = upperFirst(measureList(textOf(facts, 'measures')));
  return `${shown}: ${sentence({ code: textOf(facts, 'reason'), facts })}`;
}

/** Whether a code has a sentence of its own. */
export function hasSentence(code: string): boolean {
  return code === 'not-measured' || tables.some((table) => Object.hasOwn(table, code));
}

/**
 * The plain sentence of a reason, a warning, a piece of advice or an open question, rounded for people. A code without
 * a sentence, as from a newer version, is shown with its facts rather than hidden.
 *
 * @example sentence({ code: 'tempo-down', facts: { bpm: 120, toBpm: 108 } })
 * // 'Timing and dynamics both need room at 120 BPM: try 108 BPM, about 10 % slower.'
 */
export function sentence({ code, facts }: { readonly code: string; readonly facts: Facts }): string {
  if (code === 'not-measured') return notMeasured(facts);
  const table = tables.find((t) => Object.hasOwn(t, code));
  if (table) return table[code]!(facts);
  const shown = Object.entries(facts).map(([name, value]) => `${name} ${value}`);
  return [code.replaceAll('-', ' '), ...shown].join(', ');
}

/** A finding about the recording: what is wrong, what to do, and what isn't told because of it. */
export function findingSentence(finding: RecordingFinding): string {
  return [sentence(finding), spoiltSentence(finding.spoils)].filter((text) => text !== '').join(' ');
}
