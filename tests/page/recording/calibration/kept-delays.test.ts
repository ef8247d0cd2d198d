import { beforeEach, describe, expect, it } from 'vitest';
import { delaysOf, forgetDelays, keepDelay } from '../../../../src/page/recording/calibration/kept-delays.ts';
import { stubStorage } from '../stub-storage.ts';

const way = { outputId: 'phones', inputId: 'mic', sampleRate: 48000 };
const delay = (latency: number, change = {}) => ({
  ...way,
  latency,
  se: 0.0002,
  session: 's',
  measuredAt: '2026-03-02T18:30:00Z',
  ...change,
});

describe('kept delays', () => {
  beforeEach(stubStorage);

  it('belong to an output, a microphone and a sampling rate', () => {
    keepDelay(delay(0.04));
    keepDelay(delay(0.2, { outputId: 'speaker' }));
    keepDelay(delay(0.03, { sampleRate: 44100 }));
    expect(delaysOf(way).map(({ latency }) => latency)).toEqual([0.04]);
    expect(delaysOf({ ...way, inputId: 'other' })).toEqual([]);
  });

  it('are the latest few, and can be forgotten', () => {
    for (let n = 1; n <= 8; n++) keepDelay(delay(n / 100));
    keepDelay(delay(0.2, { outputId: 'speaker' }));
    expect(delaysOf(way).map(({ latency }) => latency)).toEqual([0.04, 0.05, 0.06, 0.07, 0.08]);
    forgetDelays(way);
    expect(delaysOf(way)).toEqual([]);
    expect(delaysOf({ ...way, outputId: 'speaker' })).toHaveLength(1);
  });

  it('survive what else may stand in their place', () => {
    localStorage.setItem('evenhand.delays', '{"a":1}');
    expect(delaysOf(way)).toEqual([]);
    localStorage.setItem('evenhand.delays', '[null, 3, {"outputId":"phones"}]');
    expect(delaysOf(way)).toEqual([]);
    keepDelay(delay(0.04));
    expect(delaysOf(way)).toHaveLength(1);
  });
});
