import type { Outcome } from '../result/take-result.ts';
import type { Finding } from './heard-recording.ts';

/** Ids of all measures that findings spoil. */
export const spoiltIds = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(findings.flatMap(({ spoils }) => spoils));

/** Strokes found too coarsely are what a spoilt recording does: the finding tells why, and what to change. */
const byRecording = 'found-too-coarsely';

/**
 * The measures with those that a finding spoils not measurable, the gravest finding being the reason; what had no
 * figure anyway for want of strokes and the like keeps its own reason.
 *
 * @example refuseSpoiled(measures, [{ code: 'gated', facts: { fallsDb: 9 }, spoils: ['missed'] }])
 */
export function refuseSpoiled<T extends { readonly id: string; readonly outcome: Outcome }>(
  measures: readonly T[],
  findings: readonly Finding[],
): T[] {
  return measures.map((measure) => {
    const finding = findings.find(({ spoils }) => spoils.includes(measure.id));
    const { outcome } = measure;
    const told =
      outcome.state === 'measured' ||
      (outcome.state === 'not-measurable' && outcome.reason.code === byRecording);
    if (finding === undefined || !told) return measure;
    const reason = { code: `spoiled-${finding.code}`, facts: finding.facts };
    return { ...measure, outcome: { state: 'not-measurable', reason } };
  });
}
