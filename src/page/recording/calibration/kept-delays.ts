import { readKept, writeKept } from '../../shell/kept.ts';

/** The way that a click takes: out here, in there. A delay belongs to one way. */
interface SoundWay {
  readonly outputId: string;
  readonly inputId: string;
  readonly sampleRate: number;
}

/** A measured delay from sending a click to its being recorded. */
export interface KeptDelay extends SoundWay {
  /** s, and its standard error within one measurement. */
  readonly latency: number;
  readonly se: number;
  /** `audioSession` of the page in which it was measured. */
  readonly session: string;
  /** ISO 8601. */
  readonly measuredAt: string;
}

const name = 'delays';
/** The latest few for each way tell how far they differ from one opening of the microphone to the next. */
const mostPerWay = 5;

const isDelay = (value: unknown): value is KeptDelay => {
  const { outputId, inputId, sampleRate, latency, se, session } = (value ?? {}) as Partial<KeptDelay>;
  return (
    typeof outputId === 'string' &&
    typeof inputId === 'string' &&
    typeof session === 'string' &&
    [sampleRate, latency, se].every((number) => typeof number === 'number' && Number.isFinite(number))
  );
};

const sameWay = (a: SoundWay, b: SoundWay): boolean =>
  a.outputId === b.outputId && a.inputId === b.inputId && a.sampleRate === b.sampleRate;

const all = (): readonly KeptDelay[] => {
  const kept = readKept(name);
  return Array.isArray(kept) ? kept.filter(isDelay) : [];
};

const others = (way: SoundWay): readonly KeptDelay[] => all().filter((delay) => !sameWay(delay, way));

/** All kept delays of a way, the latest last. */
export const delaysOf = (way: SoundWay): readonly KeptDelay[] => all().filter((delay) => sameWay(delay, way));

export function keepDelay(delay: KeptDelay): void {
  writeKept(name, [...others(delay), ...[...delaysOf(delay), delay].slice(-mostPerWay)]);
}

/** Forgets a way's delays: what was measured turned out not to be one delay. */
export const forgetDelays = (way: SoundWay): void => writeKept(name, others(way));
