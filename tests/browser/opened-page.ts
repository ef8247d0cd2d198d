import { type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import type { AnswerCall } from '../../src/server/library-answer.ts';
import type { PageFiles } from '../../src/server/page-files.ts';
import { runningPage } from '../server/running-page.ts';
import { args, executablePath } from './chromium.ts';

/** The page in a browser of its own, with everything that went wrong in it. */
export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  readonly faults: readonly string[];
  /** Stops the server; the page stays open. */
  stopServing(): void;
}

export interface OpeningOptions extends BrowserContextOptions {
  /** Part of the address behind #. */
  readonly view?: string;
  /** Further switches of the browser. */
  readonly switches?: readonly string[];
  /** What is served instead of the built page. */
  readonly files?: PageFiles;
  /** Answers what the page asks of a folder's library. */
  readonly answer?: AnswerCall;
  /** Runs in the page before anything of its own. */
  readonly before?: () => void;
}

/** Opens the built page, hands it over, and closes all of it. */
export async function withPage(
  options: OpeningOptions,
  use: (opened: OpenedPage) => Promise<void>,
): Promise<void> {
  const opened = await openPage(options);
  try {
    await use(opened);
  } finally {
    await opened.close();
  }
}

/** Opens the built page, to be closed. */
export async function openPage({
  view = '',
  switches = [],
  before,
  files,
  answer,
  ...options
}: OpeningOptions): Promise<OpenedPage & { close(): Promise<void> }> {
  const served = await runningPage(files, answer);
  const browser = await chromium.launch({ executablePath, args: [...args, ...switches] });
  const close = async () => {
    await browser.close();
    served.close();
  };
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
    if (before !== undefined) await context.addInitScript(before);
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type())) faults.push(message.text());
    });
    page.on('pageerror', (error) => faults.push(error.message));
    const address = `http://127.0.0.1:${served.port}/`;
    page.on('request', (request) => {
      if (!request.url().startsWith(address) && !/^(data|blob|about):/.test(request.url()))
        faults.push(`asked for ${request.url()}`);
    });
    await page.goto(address + view);
    await page.locator('h1').first().waitFor();
    return { page, context, address, faults, stopServing: () => served.close(), close };
  } catch (error) {
    await close();
    throw error;
  }
}
