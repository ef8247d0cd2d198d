import type { TakeSpec } from '../../fixtures/generator/take-spec.ts';

/** A finished recording spoilt; another seed is other chance. */
export type Spoil = (samples: Float32Array, sampleRate: number, seed: number) => Float32Array;

/** One way to damage a recording at strengths that grow. */
export interface Damage {
  readonly name: string;
  /** Codes of findings that tell it. */
  readonly toldBy: readonly string[];
  readonly strengths: readonly {
    readonly label: string;
    /** What is changed before the recording is rendered, or the finished recording. */
    readonly spec?: (spec: TakeSpec) => Partial<TakeSpec>;
    readonly spoil?: Spoil;
  }[];
}
