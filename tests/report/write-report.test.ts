import { describe, expect, it } from 'vitest';
import { chartList } from '../../src/charts/chart-list.ts';
import { plainLook } from '../../src/charts/look.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { strokesEmbedded } from '../../src/report/report-html.ts';
import { writeReport } from '../../src/report/write-report.ts';
import { smallTake } from '../charts/small-take.ts';
import { exampleResult } from '../support/example-result.ts';
import { clientBundle } from './client-bundle.ts';

/** The same take with figures of as many digits as a real one has. */
function restless(result: TakeResult): TakeResult {
  const stir = (values: readonly (number | null)[], by: number) =>
    values.map((v, i) => (v ?? 0) + by * Math.sin(i * i));
  const { strokes } = result;
  const time = stir(strokes.time, 0.01);
  return {
    ...result,
    strokes: {
      ...strokes,
      time,
      levelDb: stir(strokes.levelDb, 3),
      deviationMs: stir(strokes.deviationMs, 10),
    },
    tempo: { time, bpm: stir(time, 1).map((t) => 100 + t / 1000), segment: time.map(() => 0) },
  };
}

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

  it('stays under 600 kB with the most strokes it embeds, and beyond them', async () => {
    const clientScript = await clientBundle();
    for (const beats of [Math.floor(strokesEmbedded / 3), 5000]) {
      const html = await writeReport(restless(smallTake(beats)), { clientScript });
      expect(Buffer.byteLength(html)).toBeLessThan(600_000);
    }
  });
});
