/** Small things that the page remembers on this device: what was chosen last, what was read. */
const prefix = 'evenhand.';

/** What was kept under a name; null where there is nothing, or nothing may be kept here. */
export function readKept(name: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(prefix + name) ?? 'null');
  } catch {
    return null;
  }
}

/** Keeps a value; a browser that keeps nothing only forgets it. */
export function writeKept(name: string, value: unknown): void {
  try {
    localStorage.setItem(prefix + name, JSON.stringify(value));
  } catch {
    // Storage is off or full: the page works without its memory.
  }
}
