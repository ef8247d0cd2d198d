import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import type { Sheet } from '../../src/core/exercise/sheet.ts';
import type { EngineAnswer, EngineWish } from '../../src/page/engine/engine-messages.ts';

/** A wish, or a file to grade, whose bytes travel to the browser as base64. */
export type AskedEngine =
  | EngineWish
  | { readonly bytes: string; readonly sheet: Sheet; readonly name: string };

const assets = join(import.meta.dirname, '../../dist/page/assets');

/** Answers of the built page's engine, in a worker of the page, to wishes in a row, and what the console was told. */
export async function engineAnswers(
  browser: Browser,
  port: number,
  wishes: readonly AskedEngine[],
): Promise<{ readonly given: readonly EngineAnswer[]; readonly faults: readonly string[] }> {
  const page = await browser.newPage();
  const faults: string[] = [];
  page.on('console', (message) => faults.push(message.text()));
  await page.goto(`http://127.0.0.1:${port}/`);
  const script = readdirSync(assets).find((name) => /^engine-worker-.*\.js$/.test(name))!;
  const given = await page.evaluate(
    async ({ script, wishes }) => {
      const worker = new Worker(`./assets/${script}`, { type: 'module' });
      const all: unknown[] = [];
      for (const [number, wish] of wishes.entries()) {
        const body =
          'bytes' in wish
            ? {
                wish: 'grade',
                sound: { bytes: Uint8Array.from(atob(wish.bytes), (sign) => sign.charCodeAt(0)) },
                facts: { name: wish.name, sheet: wish.sheet },
              }
            : wish;
        all.push(
          await new Promise((resolve, reject) => {
            worker.onmessage = ({ data }) => resolve(data.body);
            worker.onerror = () => reject(new Error('The worker did not load.'));
            worker.postMessage({ number, body });
          }),
        );
      }
      worker.terminate();
      return all as EngineAnswer[];
    },
    { script, wishes },
  );
  await page.close();
  return { given, faults };
}
