import type { Locator } from 'playwright-core';
import { expect } from 'vitest';

/**
 * Scrolls to a part of the page and waits until the mouse meets it there. Chromium gives a click to the process whose frame
 * was drawn last at that spot; a sandboxed frame has a process of its own, so that a click in the instant of a scroll goes
 * to the report that lay there before (a page of nothing but a button and such a frame does the same, without sound too).
 * Nobody's hand is that fast.
 */
export async function scrolledTo(part: Locator): Promise<void> {
  await part.scrollIntoViewIfNeeded();
  await expect
    .poll(async () => {
      await part.page().mouse.move(0, 0);
      await part.hover();
      return part.evaluate((element) => element.matches(':hover'));
    })
    .toBe(true);
}
