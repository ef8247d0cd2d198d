import type { Microphone } from '../open-microphone.ts';

/** A part of the view that plays to the microphone; only one of them at a time. */
export interface SoundingSection {
  readonly microphone: Microphone;
  /** Between 0 and 1. */
  readonly volume: number;
  readonly busy: boolean;
  readonly setBusy: (busy: boolean) => void;
}
