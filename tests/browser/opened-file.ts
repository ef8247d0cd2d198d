import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';

/** Opens a page from a file and gives it with everything that the browser complained about or asked for elsewhere. */
export async function openedFile(
  browser: Browser,
  path: string,
  options: BrowserContextOptions,
  use: (page: Page, faults: string[]) => Promise<void>,
  before?: () => void,
): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  try {
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('console', (message) => faults.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('dialog', (dialog) => faults.push(`dialog: ${dialog.message()}`));
    page.on('request', (request) => {
      if (!/^(file|data|blob):/.test(request.url())) faults.push(`asked for ${request.url()}`);
    });
    if (before !== undefined) await page.addInitScript(before);
    await page.goto(pathToFileURL(path).href);
    await use(page, faults);
  } finally {
    await context.close();
  }
}
