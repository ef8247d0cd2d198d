import { expect, it } from 'vitest';
import { withSection } from './report-section.ts';

it('puts a section in the place of its earlier one, and leaves the others', () => {
  const one = withSection('# Report\n\nWords.\n', 'A', 'a table');
  const two = withSection(one, 'B', 'b\n');
  expect(two).toBe('# Report\n\nWords.\n\n## A\n\na table\n\n## B\n\nb\n');
  expect(withSection(two, 'A', 'new')).toBe('# Report\n\nWords.\n\n## A\n\nnew\n\n## B\n\nb\n');
});
