import { expect, it } from 'vitest';
import { assignmentTempo } from '../../../src/core/progress/assignment-tempo.ts';

const line = (exerciseId: string, bpm: number | null) => ({ exerciseId, bpm });

it.each([
  [96, 'asked'],
  [98.8, 'asked'],
  [93.3, 'asked'],
  [93.1, 'slower'],
  [48, 'slower'],
  [99, 'other'],
  [null, 'unknown'],
] as const)('a take at %s BPM stands to an assignment at 96 as %s', (bpm, tempo) => {
  expect(assignmentTempo([line('a', 96)], [line('a', bpm)])).toBe(tempo);
});

it('takes any tempo where none was asked for', () => {
  expect(assignmentTempo([line('a', null)], [line('a', 60)])).toBe('asked');
  expect(assignmentTempo([line('a', null)], [line('a', null)])).toBe('asked');
});

it('asks every line for its own tempo, and the nearest of those it was played at', () => {
  const steps = [line('a', 80), line('a', 88), line('b', 96)];
  expect(assignmentTempo(steps, steps)).toBe('asked');
  expect(assignmentTempo(steps, [line('a', 80), line('b', 96)])).toBe('slower');
  expect(assignmentTempo(steps, [line('a', 80), line('a', 88), line('b', 84)])).toBe('slower');
  // One line slower, another faster: that is another tempo, not work toward this one.
  expect(assignmentTempo(steps, [line('a', 70), line('b', 120)])).toBe('other');
  expect(assignmentTempo(steps, [...steps.slice(0, 2), line('c', 96)])).toBe('unknown');
});
