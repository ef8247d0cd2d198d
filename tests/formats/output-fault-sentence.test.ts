import { expect, it } from 'vitest';
import { outputFaultSentence } from '../../src/formats/output-fault-sentence.ts';
import type { OutputFault } from '../../src/formats/write-atomically.ts';

it.each<[OutputFault, string]>([
  [{ code: 'folder-missing', facts: { folder: '/a/b' } }, 'There is no folder "/a/b"'],
  [{ code: 'not-a-folder', facts: { folder: '/a/b' } }, '"/a/b" is a file'],
  [{ code: 'folder-not-writable', facts: { folder: '/a/b' } }, 'may not write into "/a/b"'],
  [{ code: 'output-is-a-folder', facts: {} }, 'is a folder'],
  [{ code: 'write-failed', facts: { reason: 'ENOSPC' } }, 'ENOSPC'],
])('names the file, what is wrong and what to do: %j', (fault, found) => {
  const text = outputFaultSentence('report.html', fault);
  expect(text).toContain('"report.html"');
  expect(text).toContain(found);
  expect(text).toMatch(/\. (Make|Choose) .*\.$/);
});
