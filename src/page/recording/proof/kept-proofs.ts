import { readKept, writeKept } from '../../shell/kept.ts';
import type { DeviceProof } from './device-proof.ts';

/** A proof of a microphone, and when it was made (ISO 8601). */
interface KeptProof {
  readonly inputId: string;
  readonly proof: DeviceProof;
  readonly provedAt: string;
}

const name = 'proofs';
const most = 12;

const isKept = (value: unknown): value is KeptProof => {
  const { inputId, proof, provedAt } = (value ?? {}) as Partial<KeptProof>;
  return typeof inputId === 'string' && typeof provedAt === 'string' && typeof proof?.verdict === 'string';
};

const all = (): readonly KeptProof[] => {
  const kept = readKept(name);
  return Array.isArray(kept) ? kept.filter(isKept) : [];
};

/** What was last proved of a microphone, or null. */
export const keptProof = (inputId: string): KeptProof | null =>
  all().findLast((kept) => kept.inputId === inputId) ?? null;

export function keepProof(kept: KeptProof): void {
  writeKept(name, [...all().filter(({ inputId }) => inputId !== kept.inputId), kept].slice(-most));
}
