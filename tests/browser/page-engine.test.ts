import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { openRecording } from '../../src/formats/open-recording.ts';
import type { EngineAnswer } from '../../src/page/engine/engine-messages.ts';
import { codedForms } from '../formats/coded/coded-forms.ts';
import { encoded } from '../formats/coded/coded-take.ts';
import { describeProgram } from '../programs.ts';
import { runningPage } from '../server/running-page.ts';
import { args, browserThere, executablePath } from './chromium.ts';
import { type AskedEngine, engineAnswers } from './engine-answers.ts';

const repository = join(import.meta.dirname, '../..');
const takePath = (name: string) => join(repository, 'fixtures/takes', name);

function sheetOf(name: string): Sheet {
  const parsed = parseSheet(readFileSync(takePath(`${name}.sheet`), 'utf8'));
  if (!parsed.ok) throw new Error(`${name}.sheet can't be read`);
  return parsed.sheet;
}

/** Graded by the same sources in Node, as the command line does. */
async function gradedInNode(name: string, path = takePath(`${name}.wav`)): Promise<TakeResult> {
  const recording = await openRecording(path);
  if (!recording.ok) throw new Error(`${path} can't be read`);
  try {
    const facts = { name: basename(path), sha256: recording.sha256() };
    return gradeTake(recording.source, sheetOf(name), facts);
  } finally {
    recording.close();
  }
}

/** Figures to nine decimals: the last digits may differ from one build of the mathematics to another. */
const rounded = (result: TakeResult): unknown =>
  JSON.parse(
    JSON.stringify(result, (_, value) => (typeof value === 'number' ? Number(value.toFixed(9)) : value)),
  );

describe.skipIf(!browserThere("the page's engine"))("the page's engine", () => {
  let browser: Browser;
  let served: Awaited<ReturnType<typeof runningPage>>;

  beforeAll(async () => {
    served = await runningPage();
    browser = await chromium.launch({ executablePath, args });
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    served?.close();
  });

  const answers = (wishes: readonly AskedEngine[]) => engineAnswers(browser, served.port, wishes);

  const bytesOf = (name: string) => readFileSync(takePath(`${name}.wav`)).toString('base64');

  it.each(['accent-one', 'stick-count-in'])('grades %s as the command line does', async (name) => {
    const { given, faults } = await answers([
      { bytes: bytesOf(name), sheet: sheetOf(name), name: `${name}.wav` },
    ]);
    expect(faults).toEqual([]);
    const { result } = given[0] as Extract<EngineAnswer, { answer: 'result' }>;
    expect(rounded(result)).toEqual(rounded(await gradedInNode(name)));
  });

  describeProgram('ffmpeg', 'with other files', (ffmpeg) => {
    it('decodes them to the samples of the command line, AAC nearly so', async () => {
      const folder = mkdtempSync(join(tmpdir(), 'evenhand-'));
      const paths = codedForms
        .filter(({ file }) => /^[adfhm]\./.test(file))
        .map((form) => encoded(ffmpeg, folder, form, takePath('accent-one.wav')));
      const sheet = sheetOf('accent-one');
      const { given, faults } = await answers(
        paths.map((path) => ({ bytes: readFileSync(path).toString('base64'), sheet, name: basename(path) })),
      );
      expect(faults).toEqual([]);
      for (const [i, path] of paths.entries()) {
        expect(given[i]!.answer, path).toBe('result');
        const { result } = given[i] as Extract<EngineAnswer, { answer: 'result' }>;
        const there = await gradedInNode('accent-one', path);
        if (!path.endsWith('m4a')) expect(rounded(result), path).toEqual(rounded(there));
        expect(result.strokes.time).toHaveLength(there.strokes.time.length);
        // Two decoders of AAC, in floats, differ by what moves a stroke 2 µs; where it begins then a sample later, its
        // level moves by a hundredth of a dB. The usual stroke is the same to a few 0.00001 dB.
        const apart = (here: readonly number[], elsewhere: readonly number[]) =>
          here.map((value, k) => Math.abs(value - elsewhere[k]!)).sort((a, b) => a - b);
        const levels = apart(result.strokes.levelDb, there.strokes.levelDb);
        expect(apart(result.strokes.time, there.strokes.time).at(-1), path).toBeLessThan(1e-5);
        expect(levels.at(-1), path).toBeLessThan(0.02);
        expect(levels[Math.floor(0.9 * levels.length)], path).toBeLessThan(0.001);
      }
      rmSync(folder, { recursive: true });
    }, 240_000);
  });

  it('writes the report with the sound inside, its parts named in its policy', async () => {
    const result = await gradedInNode('accent-one');
    const { given, faults } = await answers([
      { wish: 'report', result, sound: { samples: [new Float32Array(48_000)], sampleRate: 48_000 } },
    ]);
    expect(faults).toEqual([]);
    const html = (given[0] as Extract<EngineAnswer, { answer: 'report' }>).html;
    expect(html).toContain('data:audio/mpeg;base64,');
    expect(html).not.toContain('-to-come');
    expect(html.match(/sha256-[A-Za-z0-9+/]{43}=/g)).toHaveLength(4);
  });

  it('says in a sentence what it cannot read', async () => {
    const { given } = await answers([
      { bytes: Buffer.from('%PDF-1.7').toString('base64'), sheet: sheetOf('accent-one'), name: 'notes.pdf' },
    ]);
    expect(given[0]).toMatchObject({ answer: 'fault', unreadable: true });
    expect((given[0] as { sentence: string }).sentence).toContain('"notes.pdf" is a PDF document');
  });
});
