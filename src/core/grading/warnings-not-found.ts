import type { Finding } from '../recording-check/heard-recording.ts';
import type { Reason } from '../result/take-result.ts';

/** What was told of the device before the take, and the finding in the take that says the same. */
const saidBy: Readonly<Record<string, string>> = {
  'microphone-gating': 'gated',
  'microphone-gain-control': 'gain-control',
};

/** Warnings given beforehand without those that the check of the recording has found itself. */
export function warningsNotFound(warnings: readonly Reason[], findings: readonly Finding[]): Reason[] {
  return warnings.filter((warning) => !findings.some(({ code }) => code === saidBy[warning.code]));
}
