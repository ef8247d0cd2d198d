type Kind = 'input' | 'output';

const keyOf = (kind: Kind) => `evenhand-${kind}-device`;

/** The device chosen last, or null. */
export function keptDevice(kind: Kind): string | null {
  try {
    return localStorage.getItem(keyOf(kind));
  } catch {
    return null;
  }
}

/** Notes which device was chosen; a browser that keeps nothing is asked again next time. */
export function keepDevice(kind: Kind, deviceId: string): void {
  try {
    localStorage.setItem(keyOf(kind), deviceId);
  } catch {
    // Private browsing without storage.
  }
}
