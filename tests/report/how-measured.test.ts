import { describe, expect, it } from 'vitest';
import { measures } from '../../src/core/measures/index.ts';
import { figures } from '../../src/report/parts/figures.ts';
import { howMeasured } from '../../src/report/parts/how-measured.ts';
import { exampleResult } from '../support/example-result.ts';

const result = exampleResult();

describe('howMeasured', () => {
  const html = howMeasured(result);

  it('is where the link of every figure leads', () => {
    const targets = [...figures(result).matchAll(/href="#(how-[^"]+)"/g)].map((match) => match[1]);
    expect(targets.length).toBeGreaterThan(5);
    for (const target of targets) expect(html).toContain(`id="${target}"`);
  });

  it('gives the source of every measure', () => {
    for (const { id } of result.measures) {
      const known = measures.find((measure) => measure.id === id);
      if (known === undefined || known.exportOnly) continue;
      expect(html).toMatch(new RegExp(`id="how-${id}".*?Source: .{10,}`));
    }
  });
});
