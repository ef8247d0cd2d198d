import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { strokesEmbedded, strokesPacked } from '../../src/report/report-html.ts';
import { writeReport } from '../../src/report/write-report.ts';
import { smallTake } from '../charts/small-take.ts';
import { exampleResult } from '../support/example-result.ts';
import { clientBundle, filesBundle } from './client-bundle.ts';
import { restless } from './restless.ts';

/** Pictures that a take has something for. */
const drawable = (result: TakeResult) =>
  chartList.filter(({ draw }) => draw(result, plainLook) !== null).length;

describe('writeReport', () => {
  it('holds images, type and script, and stays under 600 kB', async () => {
    const { scores } = smallTake(1);
    const html = await writeReport(exampleResult({ scores }), { clientScript: await clientBundle() });
    expect(html.match(/<img src="data:image\/png;base64,/g)).toHaveLength(
      drawable(exampleResult({ scores })),
    );
    expect(html.match(/@font-face/g)).toHaveLength(2);
    expect(html).toContain('id="drawn-part"');
    expect(Buffer.byteLength(html)).toBeLessThan(600_000);
  });

  it('leaves the images out when asked to, and says so where scripts are off', async () => {
    const html = await writeReport(smallTake(4), { clientScript: await clientBundle(), withImages: false });
    expect(html.match(/<img /g)).toBeNull();
    expect(html.match(/<noscript>/g)).toHaveLength(drawable(smallTake(4)));
  });

  it('stays under 600 kB with files to keep, up to the most strokes that it has as they are, and beyond all', async () => {
    const scripts = { clientScript: await clientBundle(), filesScript: await filesBundle() };
    for (const beats of [Math.floor(strokesEmbedded / 3), Math.ceil(strokesPacked / 3) + 1]) {
      const html = await writeReport(restless(smallTake(beats)), scripts);
      expect(Buffer.byteLength(html)).toBeLessThan(600_000);
    }
  }, 60_000);
});
