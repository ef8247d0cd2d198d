import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runningPage } from '../server/running-page.ts';
import { browserThere } from './chromium.ts';
import { withMicrophone } from './with-microphone.ts';

const wav = join(import.meta.dirname, '../../fixtures/takes/accent-one.wav');

/** What axe-core finds against WCAG 2.2 A and AA and its best practices. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, { iframes: false }),
  );
  return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

const what = 'a page that was killed while recording';
describe.skipIf(!browserThere(what))(what, () => {
  let served: Awaited<ReturnType<typeof runningPage>>;
  let folder: string;
  let context: BrowserContext;
  let page: Page;
  const faults: string[] = [];

  const open = async (path = '') => {
    context = await withMicrophone(join(folder, 'profile'), wav);
    page = await context.newPage();
    page.on('pageerror', (error) => faults.push(error.message));
    await page.setViewportSize({ width: 360, height: 740 });
    await page.goto(`http://127.0.0.1:${served.port}/${path}`);
    await page.locator('h1').first().waitFor();
  };
  const killedWhileRecording = async (seconds: number) => {
    await page.getByRole('button', { name: 'Play and record' }).click();
    await page.locator('.playing').waitFor();
    await page.waitForTimeout(1000 * seconds);
    const session = await context.newCDPSession(page);
    session.send('Browser.crash').catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 700));
    await open();
  };
  const offered = () => page.getByRole('heading', { name: 'A recording is still here' });

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'evenhand-recovery-'));
    served = await runningPage();
    await open();
  }, 60_000);
  afterAll(async () => {
    await context?.close();
    served?.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
  });

  it('offers the recording, deletes it for good once that is confirmed', { timeout: 60_000 }, async () => {
    await killedWhileRecording(4);
    await offered().waitFor();
    expect(await violations(page)).toEqual([]);
    const room = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(room).toBeLessThanOrEqual(0);
    await page.getByRole('button', { name: 'Delete it' }).click();
    await page.getByRole('button', { name: 'Leave as it is' }).click();
    await page.getByRole('button', { name: 'Delete it' }).click();
    await page.getByRole('button', { name: 'Delete it for good' }).click();
    await offered().waitFor({ state: 'detached' });
    await page.reload();
    await page.locator('h1').first().waitFor();
    await page.waitForTimeout(800);
    expect(await offered().count()).toBe(0);
  });

  it('grades it, keeps it and lets the copy go', { timeout: 90_000 }, async () => {
    await killedWhileRecording(8);
    await offered().waitFor();
    await page.getByRole('button', { name: 'Grade and keep it' }).click();
    await page.locator('iframe.report').waitFor({ timeout: 30_000 });
    const report = page.frameLocator('iframe.report');
    await report.getByText('The recording ended by itself').first().waitFor();
    await page.goto(`http://127.0.0.1:${served.port}/#/takes`);
    await page.locator('.take-row').first().waitFor();
    expect(await page.locator('.take-row').count()).toBe(1);
    await page.goto(`http://127.0.0.1:${served.port}/#/`);
    await page.reload();
    await page.locator('h1').first().waitFor();
    await page.waitForTimeout(800);
    expect(await offered().count()).toBe(0);
    expect(faults).toEqual([]);
  });
});

const opened = "the microphone's view with a microphone";
describe.skipIf(!browserThere(opened))(opened, () => {
  it('is accessible in light and dark, meets fingers, and knows a wireless output by its name', {
    timeout: 60_000,
  }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'evenhand-view-'));
    const served = await runningPage();
    const context = await withMicrophone(folder, wav);
    try {
      const page = await context.newPage();
      await page.setViewportSize({ width: 360, height: 740 });
      await page.goto(`http://127.0.0.1:${served.port}/#/microphone`);
      await page.getByRole('button', { name: 'Open the microphone' }).click();
      await page.getByRole('heading', { name: 'Does it record what you play' }).waitFor();
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await violations(page), colorScheme).toEqual([]);
      }
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('main button, main select')]
          .filter((one) => {
            const { width, height } = one.getBoundingClientRect();
            return width < 48 || height < 48;
          })
          .map((one) => one.textContent),
      );
      expect(small).toEqual([]);
      await page.getByText(/Loudest lately: −\d+\sdB/).waitFor();
      await page.getByRole('button', { name: 'Listen to the quiet' }).click();
      await page.getByText(/the noise lies at −\d+\sdB/).waitFor({ timeout: 8000 });
      // Other headphones are plugged in: what their name says is said before anything is measured.
      await page.evaluate(() => {
        const devices = navigator.mediaDevices;
        const headset = {
          kind: 'audiooutput',
          deviceId: 'default',
          label: 'Headset (Bluetooth)',
          groupId: '',
        };
        Object.assign(devices, { enumerateDevices: async () => [headset] });
        devices.dispatchEvent(new Event('devicechange'));
      });
      await page.getByText('This output is a wireless one, going by its name').waitFor();
    } finally {
      await context.close();
      served.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
