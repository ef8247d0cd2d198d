import type { BreakingPoints, TakeResult } from '../result/take-result.ts';
import type { AdviceInput, Finding } from './advice/finding.ts';
import { adviceRules } from './advice/index.ts';
import { risingAdvice } from './breaking/rising-advice.ts';
import { secureScore } from './score-curve.ts';
import type { Scores } from './score-take.ts';
import { tempoAdvice } from './tempo-advice.ts';

type Advice = TakeResult['advice'];

/** More than three things nobody works on at once. Our judgement. */
const mostFindings = 3;
const mostStrokes = 8;

/** What turned accents bring with them: these findings compare strokes by where accents are written. */
const byWrittenAccents = [
  'taps-too-loud',
  'taps-after-accents-loud',
  'accents-and-taps-overlap',
  'contrast-too-wide',
  'accents-uneven',
  'taps-uneven',
  'accents-lost',
  'hands-apart-in-ratio',
  'bend-at-accent',
  'fades-at-the-end',
] as const;

/** Findings that come from the same cause and share a remedy: only the costlier of a pair is said. */
const sameCause: readonly (readonly [string, string])[] = [
  ['taps-too-loud', 'accents-and-taps-overlap'],
  ['accents-lost', 'accents-and-taps-overlap'],
  ...byWrittenAccents.flatMap((code): [string, string][] => [
    ['accents-off-from-start', code],
    ['accents-turned-round', code],
  ]),
];

function coveredBy(kept: readonly Finding[], finding: Finding): boolean {
  return kept.some(
    (other) =>
      other.code === finding.code ||
      sameCause.some((pair) => pair.includes(other.code) && pair.includes(finding.code)),
  );
}

/**
 * The two or three things to work on, those first that cost the most points, then what to do with the tempo. A figure
 * whose interval reaches into secure is passed over: when nothing is left, that is said, and whether everything is
 * secure or the take leaves it open. Noted discomfort stands first. Same input, same advice.
 */
export function advise(
  input: AdviceInput & {
    readonly scores: Scores | null;
    /** The tempo of the take; null when its lines have several. */
    readonly bpm: number | null;
    /** The tempo that was played, where it is far off the one asked for. */
    readonly played?: number | null;
    readonly discomfort?: boolean;
    readonly cleanOnAnotherDay?: boolean;
    /** Of exercises whose tempo rises. */
    readonly breaking?: readonly BreakingPoints[];
  },
): Advice {
  const found = adviceRules.flatMap((rule) => rule(input)).toSorted((a, b) => b.lost - a.lost);
  const kept: Finding[] = [];
  for (const finding of found)
    if (kept.length < mostFindings && !coveredBy(kept, finding)) kept.push(finding);
  const advice: Advice = kept.map(({ code, facts, strokes }) => ({
    code,
    facts,
    strokes: strokes.slice(0, mostStrokes),
  }));
  if (advice.length === 0 && input.scores) {
    const allSecure = input.scores.dimensions.every((d) => d.score.score >= secureScore);
    advice.push({ code: allSecure ? 'nothing-to-mend' : 'nothing-stands-out', facts: {}, strokes: [] });
  }
  const fading = kept.some(({ code }) => code === 'fades-at-the-end');
  // Where the tempo rises there is no one tempo to stay at.
  const [rising] = input.breaking ?? [];
  const tempo =
    rising === undefined || input.discomfort ? tempoAdvice({ ...input, fading }) : risingAdvice(rising);
  if (!tempo) return advice;
  const item = { ...tempo, strokes: [] };
  return input.discomfort ? [item, ...advice] : [...advice, item];
}
