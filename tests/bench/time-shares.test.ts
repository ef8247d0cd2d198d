import { expect, it } from 'vitest';
import { timeShares } from './time-shares.ts';

const node = (id: number, functionName: string, children: number[] = []) => ({
  id,
  callFrame: { functionName },
  children,
});
const profile = {
  nodes: [
    node(1, '(root)', [2, 6]),
    node(2, 'gradeTake', [3, 4]),
    node(3, 'hearStrokes', [5]),
    node(4, 'checkRecording'),
    node(5, 'read'),
    node(6, 'compile'),
  ],
  samples: [6, 2, 3, 5, 4, 5],
  timeDeltas: [7000, 1000, 2000, 3000, 500, 250],
};

it('counts what a job calls to it, and the rest to none', () => {
  const shares = timeShares(profile, { listening: ['hearStrokes'], checking: ['checkRecording'] }, 'rest');
  expect(Object.fromEntries(shares)).toEqual({ listening: 5.25, checking: 0.5, rest: 8 });
});

it('gives a call inside another job to its own', () => {
  const shares = timeShares(profile, { grading: ['gradeTake'], reading: ['read'] }, 'rest');
  expect(Object.fromEntries(shares)).toEqual({ grading: 3.5, reading: 3.25, rest: 7 });
});
