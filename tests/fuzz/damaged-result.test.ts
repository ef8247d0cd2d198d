import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { seeded } from '../../fixtures/generator/random.ts';
import { textSummary } from '../../src/cli/text-summary.ts';
import { modelFromTake } from '../../src/core/grading/played-model.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { NewerTakeResult, upgradeTakeResult } from '../../src/core/result/upgrade-take-result.ts';
import { InvalidTakeResult } from '../../src/core/result/validate-take-result.ts';
import { strokesTable } from '../../src/formats/strokes-table.ts';
import { takeMidi } from '../../src/formats/take-midi.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { damaged, shapesOf } from './damaged-result.ts';

const demo = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../reports/samples/demo.json'), 'utf8'),
) as TakeResult;
const count = Number(process.env.EVENHAND_FUZZ ?? 60);

/** Everything that shows a take, which a take file may have brought from anywhere. */
function show(result: TakeResult): string {
  strokesTable(result);
  takeMidi(result);
  modelFromTake(result);
  textSummary(result, { color: false, width: 80 });
  return reportHtml(result, {
    images: {},
    clientScript: '0',
    fontFaces: '',
    sha256: () => 'none',
    files: { script: '0', pack: (text) => gzipSync(text).toString('base64') },
  });
}

describe('a result in which one value is another', () => {
  it('is refused with its place, or shown whole', () => {
    const random = seeded('damaged results');
    const shapes = shapesOf(demo);
    let shown = 0;
    for (let i = 0; i < count; i++) {
      const document = damaged(demo, shapes, random);
      let result: TakeResult;
      try {
        result = upgradeTakeResult(document);
      } catch (error) {
        if (!(error instanceof InvalidTakeResult || error instanceof NewerTakeResult)) throw error;
        continue;
      }
      expect(show(result)).toContain('</html>');
      shown += 1;
    }
    expect(shown).toBeGreaterThan(count / 5);
    expect(shown).toBeLessThan(count);
  });
});
