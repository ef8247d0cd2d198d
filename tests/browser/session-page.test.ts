import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram, sampleSheetPath, sampleTakePath } from '../cli/built-program.ts';
import { args, browserThere, executablePath } from './chromium.ts';

describe.skipIf(!browserThere("the page before a session's reports"))(
  "the page before a session's reports",
  () => {
    let browser: Browser;
    let folder: string;

    beforeAll(async () => {
      folder = mkdtempSync(join(tmpdir(), 'evenhand-session-'));
      const reports = ['--report-folder', folder, '--no-sound'];
      const { status } = runProgram([
        'session',
        sampleTakePath('demo'),
        '--sheet',
        sampleSheetPath('demo'),
        ...reports,
      ]);
      expect(status).toBe(0);
      browser = await chromium.launch({ executablePath, args });
    });
    afterAll(async () => {
      await browser?.close();
      rmSync(folder, { recursive: true, force: true });
    });

    it.each(['light', 'dark'] as const)(
      'leads to each report and has nothing for axe to find: %s',
      async (colorScheme) => {
        const page = await browser.newPage({ viewport: { width: 360, height: 740 }, colorScheme });
        const errors: string[] = [];
        page.on('pageerror', (error) => errors.push(error.message));
        page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
        await page.goto(pathToFileURL(join(folder, 'index.html')).href);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide).toBeLessThanOrEqual(360);
        expect(errors).toEqual([]);
        await page
          .context()
          .newCDPSession(page)
          .then((session) => session.send('Page.setBypassCSP', { enabled: true }));
        await page.reload();
        await page.addScriptTag({ content: axe.source });
        const { violations } = await page.evaluate(() =>
          (window as unknown as { axe: typeof axe }).axe.run(),
        );
        expect(violations.map(({ id }) => id)).toEqual([]);
        const links = page.getByRole('link', { name: /Open the report/ });
        expect(await links.count()).toBe(3);
        await links.nth(1).click();
        await page.waitForURL(/take-02-line-2\.html$/);
        expect(await page.locator('h2').first().textContent()).toBe('Scores');
        await page.close();
      },
    );
  },
);
