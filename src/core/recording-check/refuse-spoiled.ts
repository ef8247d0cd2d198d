import type { Outcome } from '../result/take-result.ts';
import type { Finding } from './heard-recording.ts';

/** Ids of all measures that findings spoil. */
export const spoiltIds = (findings: readonly Finding[]): ReadonlySet<string> =>
  new Set(findings.flatMap(({ spoils }) => spoils));

/**
 * The measures with those that a finding spoils not measurable, the gravest finding being the reason; what had no figure
 * anyway keeps its own reason.
 *
 * @example refuseSpoiled(measures, [{ code: 'gated', facts: { fallsDb: 9 }, spoils: ['missed'] }])
 */
export function refuseSpoiled<T extends { readonly id: string; readonly outcome: Outcome }>(
  measures: readonly T[],
  findings: readonly Finding[],
): T[] {
  return measures.map((measure) => {
    const finding = findings.find(({ spoils }) => spoils.includes(measure.id));
    if (finding === undefined || measure.outcome.state !== 'measured') return measure;
    const reason = { code: `spoiled-${finding.code}`, facts: finding.facts };
    return { ...measure, outcome: { state: 'not-measurable', reason } };
  });
}
