/** Seconds that are mixed at a time, and how far ahead of what is heard. */
const block = 0.4;
const ahead = 1.6;
/** Between a change and its being heard, and how long one sound takes over from another, s. */
const delay = 0.08;
const takeOver = 0.02;

/** Samples of what is to be heard, by the first one and their count; null when there are no more. */
type Mix = (first: number, count: number) => Float32Array | null;

/** Plays what a mix gives, block by block; starting anew takes over from what is heard without a click. */
export interface SoundPlayer {
  /** `softly`: the volume rises over a moment, as when nothing was heard before. */
  start(mix: Mix, first: number, softly: boolean): void;
  stop(): void;
  setVolume(gain: number): void;
  /** Sample of the mix that is heard now. */
  heard(): number;
}

/**
 * A player on an audio context. Blocks begin at whole samples, each where the one before it ends. `ended` is called
 * when the last one has been heard.
 */
export function soundPlayer(context: AudioContext, sampleRate: number, ended: () => void): SoundPlayer {
  const master = context.createGain();
  master.gain.value = 0;
  master.connect(context.destination);
  let stopCurrent: (at: number) => void = () => {};
  let origin = { frame: 0, first: 0 };

  const start: SoundPlayer['start'] = (mix, first, softly) => {
    const frame = Math.ceil((context.currentTime + delay) * sampleRate);
    const at = frame / sampleRate;
    stopCurrent(at);
    origin = { frame, first };
    const gain = context.createGain();
    gain.gain.setValueAtTime(0, at);
    gain.gain.linearRampToValueAtTime(1, at + (softly ? 0.3 : takeOver));
    gain.connect(master);
    const size = Math.round(block * sampleRate);
    let next = 0;
    let over = false;
    const fill = () => {
      const now = context.currentTime;
      while (!over && (frame + next) / sampleRate < now + ahead) {
        const samples = mix(first + next, size);
        if (samples === null) {
          over = true;
          break;
        }
        const source = blockSource(context, samples, sampleRate);
        source.connect(gain);
        source.start((frame + next) / sampleRate);
        next += size;
      }
      if (over && now > (frame + next) / sampleRate) {
        finish();
        ended();
      }
    };
    const timer = setInterval(fill, 100);
    const finish = () => {
      clearInterval(timer);
      stopCurrent = () => {};
    };
    stopCurrent = (when) => {
      finish();
      gain.gain.cancelScheduledValues(when);
      gain.gain.setValueAtTime(gain.gain.value, when);
      gain.gain.linearRampToValueAtTime(0, when + takeOver);
      setTimeout(() => gain.disconnect(), (when - context.currentTime + takeOver) * 1000 + 50);
    };
    fill();
  };

  return {
    start,
    stop: () => stopCurrent(context.currentTime + 0.005),
    setVolume: (volume) => master.gain.setTargetAtTime(volume, context.currentTime, 0.02),
    heard: () => origin.first + Math.round(context.currentTime * sampleRate) - origin.frame,
  };
}

/** A source that plays samples once. */
function blockSource(
  context: BaseAudioContext,
  samples: Float32Array,
  sampleRate: number,
): AudioBufferSourceNode {
  const buffer = context.createBuffer(1, samples.length, sampleRate);
  buffer.getChannelData(0).set(samples);
  const source = context.createBufferSource();
  source.buffer = buffer;
  return source;
}
