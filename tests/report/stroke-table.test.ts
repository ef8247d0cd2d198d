import { describe, expect, it } from 'vitest';
import { strokesListed, strokeTable } from '../../src/report/parts/stroke-table.ts';
import { smallTake } from '../charts/small-take.ts';
import { exampleResult } from '../support/example-result.ts';

const rows = (html: string) => html.match(/<tbody>.*<\/tbody>/s)![0].match(/<tr>/g)!.length;

describe('strokeTable', () => {
  it('lists every stroke and the missed one, in order', () => {
    const html = strokeTable(exampleResult());
    expect(rows(html)).toBe(72 + 1);
    expect(html.match(/>missed</g)).toHaveLength(1);
    expect(html.match(/>one too many</g)).toHaveLength(1);
    const times = [...html.matchAll(/<td>(\d+):([\d.]+)<\/td>/g)].map(
      ([, m, s]) => 60 * Number(m) + Number(s),
    );
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it('lists of a long take those that stand out', () => {
    const result = smallTake(Math.ceil(strokesListed / 3) + 1);
    const deviationMs = result.strokes.deviationMs.map((value, i) => (i === 200 ? 61.5 : value));
    const html = strokeTable({ ...result, strokes: { ...result.strokes, deviationMs } });
    expect(html).toContain('stand out most');
    expect(html).toContain('61.5 ms late');
    expect(rows(html)).toBe(100);
  });
});
