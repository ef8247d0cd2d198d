import { describe, expect, it } from 'vitest';
import { delayInUse } from '../../../../src/page/recording/calibration/delay-in-use.ts';
import type { KeptDelay } from '../../../../src/page/recording/calibration/kept-delays.ts';

const delay = (latency: number, session: string): KeptDelay => ({
  outputId: 'out',
  inputId: 'in',
  sampleRate: 48000,
  latency,
  se: 0.0002,
  session,
  measuredAt: '2026-03-02T18:30:00Z',
});

describe('delayInUse', () => {
  it('has none where nothing was measured', () => {
    expect(delayInUse([], 'now')).toBeNull();
  });

  it('is as good as it was measured while the microphone stays open', () => {
    expect(delayInUse([delay(0.05, 'before'), delay(0.04, 'now')], 'now')).toEqual({
      latency: 0.04,
      se: 0.0002,
    });
  });

  it('is worth less in another opening: by our judgement first, then by what openings showed', () => {
    expect(delayInUse([delay(0.04, 'before')], 'now')!.se).toBeCloseTo(Math.hypot(0.0002, 0.004), 9);
    const three = [delay(0.04, 'a'), delay(0.042, 'b'), delay(0.044, 'c')];
    // Standard deviation of 40, 42 and 44 ms: 2 ms.
    expect(delayInUse(three, 'now')!.latency).toBe(0.044);
    expect(delayInUse(three, 'now')!.se).toBeCloseTo(Math.hypot(0.0002, 0.002), 9);
  });
});
