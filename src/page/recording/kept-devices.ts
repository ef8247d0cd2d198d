import { readKept, writeKept } from '../shell/kept.ts';

type Kind = 'input' | 'output';

/** The device chosen last, or null. */
export function keptDevice(kind: Kind): string | null {
  const kept = readKept(`${kind}-device`);
  return typeof kept === 'string' && kept !== '' ? kept : null;
}

export const keepDevice = (kind: Kind, deviceId: string): void => writeKept(`${kind}-device`, deviceId);
