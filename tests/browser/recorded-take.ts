import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { parseSheet } from '../../src/core/exercise/parse-sheet.ts';
import { gradeTake } from '../../src/core/grade-take.ts';
import type { TakeResult } from '../../src/core/result/take-result.ts';
import { memoryBytes } from '../../src/formats/memory-bytes.ts';
import { riffLayout } from '../../src/formats/riff-layout.ts';
import { wavSource } from '../../src/formats/wav-source.ts';

/** Recordings with known strokes. */
export const takes = join(import.meta.dirname, '../../fixtures/takes');
const sheetText = readFileSync(join(takes, 'accent-one.sheet'), 'utf8');

/** The microphone hears a rendered take, once; no dialog asks. */
export const hears = (name: string) => [
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-audio-capture=${join(takes, `${name}.wav`)}%noloop`,
];

/** The take of `hears('accent-one')` graded here. */
export function gradedHere(bytes: Uint8Array): TakeResult {
  const layout = riffLayout(memoryBytes(bytes));
  const parsed = parseSheet(sheetText);
  if (!layout.ok || !parsed.ok) throw new Error("The take can't be read.");
  return gradeTake(wavSource(memoryBytes(bytes), layout.layout), parsed.sheet);
}

/** The result that the shown report holds. */
export async function shownResult(page: Page): Promise<TakeResult> {
  const html = (await page.locator('iframe.report').getAttribute('srcdoc'))!;
  const packed = /<script type="text\/plain" data-packed="result.json">([^<]+)</.exec(html)![1]!;
  return JSON.parse(gunzipSync(Buffer.from(packed, 'base64')).toString()) as TakeResult;
}

/** Recordings in the browser's private files. */
export async function keptRecordings(page: Page): Promise<Uint8Array[]> {
  const found = await page.evaluate(async () => {
    const all: string[] = [];
    const walk = async (folder: FileSystemDirectoryHandle): Promise<void> => {
      for await (const entry of (
        folder as unknown as { values(): AsyncIterable<FileSystemHandle> }
      ).values()) {
        if (entry.kind === 'directory') await walk(entry as FileSystemDirectoryHandle);
        else {
          const file = await (entry as FileSystemFileHandle).getFile().catch(() => null);
          if (file === null || (await file.slice(0, 4).text()) !== 'RIFF') continue;
          const bytes = new Uint8Array(await file.arrayBuffer());
          let text = '';
          for (const byte of bytes) text += String.fromCharCode(byte);
          all.push(btoa(text));
        }
      }
    };
    await walk(await navigator.storage.getDirectory());
    return all;
  });
  return found.map((text) => Uint8Array.from(Buffer.from(text, 'base64')));
}

/** Figures of both results lie in each other's ranges, and there are some. */
export function expectAgreement(one: TakeResult, other: TakeResult): void {
  expect(one.grading).toEqual({ state: 'graded' });
  let compared = 0;
  for (const { id, scope, outcome } of one.measures) {
    if (outcome.state !== 'measured') continue;
    const twin = other.measures.find((m) => m.id === id && JSON.stringify(m.scope) === JSON.stringify(scope));
    if (twin?.outcome.state !== 'measured') continue;
    const { low, high } = twin.outcome;
    const room = 1e-9 + 0.001 * Math.abs(twin.outcome.value);
    expect(outcome.value, `${id} ${JSON.stringify(scope)}`).toBeGreaterThanOrEqual(low - room);
    expect(outcome.value, `${id} ${JSON.stringify(scope)}`).toBeLessThanOrEqual(high + room);
    compared += 1;
  }
  expect(compared).toBeGreaterThan(30);
}
