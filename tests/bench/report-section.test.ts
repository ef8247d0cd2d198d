import { expect, it } from 'vitest';
import { sectionOf, withSection } from './report-section.ts';

it('puts a section in the place of its earlier one, and leaves the others', () => {
  const one = withSection('# Report\n\nWords.\n', 'A', 'a table');
  const two = withSection(one, 'B', 'b\n');
  expect(two).toBe('# Report\n\nWords.\n\n## A\n\na table\n\n## B\n\nb\n');
  expect(withSection(two, 'A', 'new')).toBe('# Report\n\nWords.\n\n## A\n\nnew\n\n## B\n\nb\n');
});

it('tells what stands in a section', () => {
  const text = withSection(withSection('# Report\n', 'A', 'one\n\ntwo'), 'B', 'three');
  expect(sectionOf(text, 'A')).toBe('one\n\ntwo');
  expect(sectionOf(text, 'B')).toBe('three');
  expect(sectionOf(text, 'C')).toBeNull();
});
