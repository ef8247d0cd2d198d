import { expect, it } from 'vitest';
import type { RecoveredSound } from '../../../../src/page/recording/kept/recover-takes.ts';
import { recoveredClick, recoveredWarnings } from '../../../../src/page/recording/kept/recovered-take.ts';

const playedClick = { times: [1, 1.5], calibrated: true, uncertaintyMs: 0.4 };
const sound = (notes: RecoveredSound['notes']): RecoveredSound => ({
  samples: new Float32Array(48000),
  sampleRate: 48000,
  gaps: [],
  notes,
});

it('a recovered recording has its click only where the take had ended', () => {
  const ended = sound([{ frame: 48000, what: 'click', facts: { playedClick } }]);
  expect(recoveredClick(ended)).toEqual(playedClick);
  expect(recoveredWarnings(ended)).toEqual([]);
  const killed = sound([{ frame: 10, what: 'page-hidden', facts: {} }]);
  expect(recoveredClick(killed)).toBeNull();
  expect(recoveredWarnings(killed)).toEqual([{ code: 'recording-cut-short', facts: { at: 1 } }]);
});

it('damaged notes give no click', () => {
  for (const damaged of [null, 3, {}, { ...playedClick, times: ['1'] }, { ...playedClick, calibrated: 1 }])
    expect(recoveredClick(sound([{ frame: 0, what: 'click', facts: { playedClick: damaged } }]))).toBeNull();
});
