import { describe, expect, it } from 'vitest';
import { mutations } from './mutate.ts';
import { parsers } from './parsers.ts';

/** `tests/bench/fuzz-parsers.ts` does the same with tens of thousands. */
const count = 120;

describe.each(parsers)('$name', ({ name, corpus, words, read }) => {
  it('reads good files, and answers to damaged ones without a crash', async () => {
    const files = await corpus();
    for (const [i, bytes] of files.entries()) expect(await read(bytes), `file ${i}`).toBe(true);
    let used = 0;
    for (const bytes of mutations(files, {
      seed: name.length,
      count,
      words: words.map((word) => Buffer.from(word)),
    }))
      if (await read(bytes)) used += 1;
    expect(used).toBeLessThan(count);
  });
});
