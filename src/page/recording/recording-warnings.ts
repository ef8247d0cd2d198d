import type { Reason } from '../../core/result/take-result.ts';
import type { ClockFollowed } from './capture/follow-clock.ts';
import type { DeviceProof } from './proof/device-proof.ts';
import type { Trouble } from './recording-trouble.ts';

const early: readonly string[] = ['microphone-ended', 'interrupted'];
const habits: readonly string[] = ['gating', 'noise-suppression', 'gain-control'];

/** What the reader of a take's result must know of its recording; gaps are told by themselves. */
export function recordingWarnings(
  troubles: readonly Trouble[],
  stalls: ClockFollowed['stalls'],
  proof: DeviceProof | null,
): Reason[] {
  const warnings: Reason[] = [];
  const cut = troubles.find(({ code }) => early.includes(code));
  if (cut !== undefined) warnings.push({ code: 'recording-cut-short', facts: { at: cut.at } });
  const [stall] = stalls;
  if (stall !== undefined) {
    const seconds = stalls.reduce((sum, one) => sum + one.seconds, 0);
    warnings.push({ code: 'recording-fell-behind', facts: { at: stall.at, seconds } });
  }
  if (proof !== null && habits.includes(proof.verdict))
    warnings.push({ code: `microphone-${proof.verdict}`, facts: {} });
  return warnings;
}
