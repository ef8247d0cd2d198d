import { describe, expect, it } from 'vitest';
import { hasSentence, sentence } from '../../../src/core/result/sentences.ts';
import type { DeviceProof } from '../../../src/page/recording/proof/device-proof.ts';
import { troubleAt } from '../../../src/page/recording/recording-trouble.ts';
import { recordingWarnings } from '../../../src/page/recording/recording-warnings.ts';

const proof = (verdict: DeviceProof['verdict']): DeviceProof => ({
  verdict,
  habits: [],
  difference: null,
  afterSilence: null,
  faint: null,
  steady: null,
  drift: null,
  loudestDb: null,
});

describe('recordingWarnings', () => {
  it('is silent about a sound recording', () => {
    expect(recordingWarnings([troubleAt('page-hidden', 3)], [], proof('obeyed'))).toEqual([]);
    expect(recordingWarnings([], [], proof('not-heard'))).toEqual([]);
  });

  it('says what ended early, fell behind, and meddles', () => {
    const stalls = [
      { at: 12, seconds: 0.05 },
      { at: 20, seconds: 0.1 },
    ];
    const warnings = recordingWarnings([troubleAt('interrupted', 43)], stalls, proof('gain-control'));
    expect(warnings.map(({ code }) => code)).toEqual([
      'recording-cut-short',
      'recording-fell-behind',
      'microphone-gain-control',
    ]);
    expect(sentence(warnings[1]!)).toContain('0:12');
    expect(sentence(warnings[1]!)).toContain('150 ms');
  });

  it.each(['gating', 'noise-suppression', 'gain-control'] as const)('has a sentence for %s', (verdict) => {
    const [warning] = recordingWarnings([], [], proof(verdict));
    expect(hasSentence(warning!.code)).toBe(true);
  });
});
