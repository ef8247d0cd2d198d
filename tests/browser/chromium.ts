import { existsSync } from 'node:fs';
import { it } from 'vitest';

export const executablePath = process.env.EVENHAND_CHROMIUM || '/usr/bin/chromium';

/** Switches for a browser that asks for nothing from outside. */
export const args = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/**
 * Whether there is a browser. Without one the checks count as skipped under a name that says so, or as failed where
 * `EVENHAND_REQUIRE_CHROMIUM=1` is set.
 */
export function browserThere(what: string): boolean {
  if (existsSync(executablePath)) return true;
  const required = process.env.EVENHAND_REQUIRE_CHROMIUM === '1';
  const reason = `NOT CHECKED, no Chromium at ${executablePath}: ${what}`;
  if (!required) console.warn(reason);
  it.skipIf(!required)(reason, () => {
    throw new Error(reason);
  });
  return false;
}
