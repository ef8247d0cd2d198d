import { expect, it } from 'vitest';
import { exercise } from '../../src/report/parts/exercise.ts';
import { smallTake } from '../charts/small-take.ts';

it('counts the lines beyond those that are drawn', () => {
  const take = smallTake(2);
  const withLines = (count: number) => {
    const lines = Array.from({ length: count }, () => take.sheet.lines[0]!);
    return exercise({ ...take, sheet: { ...take.sheet, lines } });
  };
  expect(withLines(24)).not.toContain('more line');
  expect(withLines(25)).toContain('<p>And 1 more line.</p>');
  expect(withLines(26)).toContain('<p>And 2 more lines.</p>');
});
