import type { CapturedBlock } from './captured-block.ts';

/** What the audio thread offers; the compiler's own list of it is for pages only. */
declare const currentFrame: number;
declare const registerProcessor: (name: string, processor: unknown) => void;
declare const AudioWorkletProcessor: new () => { readonly port: MessagePort };

/** Frames in a block that is handed over: 21 ms at 48 kHz. */
const blockFrames = 1024;
/** An input that has just been opened comes and goes at first: it counts once so many frames came without a break. */
const steadyFrames = 4096;

/**
 * Hands the microphone's first channel on, unchanged, with the frame at which each block begins. Where the input has no
 * channel there is nothing to hand on: the next block's frame then tells how much is missing.
 */
class Capture extends AudioWorkletProcessor {
  #block = new Float32Array(blockFrames);
  #filled = 0;
  #first = 0;
  #steady = 0;

  #handOver(): void {
    if (this.#filled === 0) return;
    const samples = this.#block.slice(0, this.#filled);
    const block: CapturedBlock = { frame: this.#first, samples, clockMs: Date.now() };
    this.port.postMessage(block, [samples.buffer]);
    this.#filled = 0;
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const channel = inputs[0]?.[0];
    if (channel === undefined || this.#first + this.#filled !== currentFrame) this.#handOver();
    if (this.#steady < steadyFrames) {
      this.#steady = channel === undefined ? 0 : this.#steady + channel.length;
      return true;
    }
    if (channel === undefined) return true;
    if (this.#filled === 0) this.#first = currentFrame;
    this.#block.set(channel, this.#filled);
    this.#filled += channel.length;
    if (this.#filled + channel.length > blockFrames) this.#handOver();
    return true;
  }
}

registerProcessor('evenhand-capture', Capture);
