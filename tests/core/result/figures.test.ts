import { describe, expect, it } from 'vitest';
import { figure, rounded, shownUnit, takeTime } from '../../../src/core/result/figures.ts';

describe('rounded', () => {
  it('uses a true minus sign, and none before zero', () => {
    expect([-2.14, -0.04, 0.04, 12.25, 1e-9].map((v) => rounded(v))).toEqual([
      '−2.1',
      '0.0',
      '0.0',
      '12.3',
      '0.0',
    ]);
    expect(rounded(-7.6, 0)).toBe('−8');
  });
});

describe('figure', () => {
  it('shows a probability as per cent', () => {
    expect(`${figure(0.985, 'probability')} ${shownUnit('probability')}`).toBe('98.5 %');
    expect(`${figure(9.2, 'dB')} ${shownUnit('dB')}`).toBe('9.2 dB');
  });
});

describe('takeTime', () => {
  it('shows minutes, seconds and tenths, carrying over', () => {
    expect([0, 8.44, 59.96, 68.24, 605].map(takeTime)).toEqual([
      '0:00.0',
      '0:08.4',
      '1:00.0',
      '1:08.2',
      '10:05.0',
    ]);
  });
});
