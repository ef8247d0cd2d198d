/** A sound on its way to the loudspeaker. */
interface PlayingSound {
  /** Context time of its first sample, s; on a whole frame. */
  readonly at: number;
  /** Between 0 and 1. */
  setVolume(volume: number): void;
  stop(): void;
}

/** Quick enough to stop a click, slow enough not to make one, s. */
const fade = 0.01;

/** Sounds samples from a moment of the audio clock on, to the sample. */
export function playSound(
  context: BaseAudioContext,
  samples: Float32Array<ArrayBuffer>,
  { after, volume, done }: { readonly after: number; readonly volume: number; readonly done?: () => void },
): PlayingSound {
  const { sampleRate } = context;
  const at = Math.ceil((context.currentTime + after) * sampleRate) / sampleRate;
  const buffer = new AudioBuffer({ length: Math.max(1, samples.length), numberOfChannels: 1, sampleRate });
  buffer.copyToChannel(samples, 0);
  const source = new AudioBufferSourceNode(context, { buffer });
  const gain = new GainNode(context, { gain: volume });
  source.connect(gain).connect(context.destination);
  if (done !== undefined) source.addEventListener('ended', done);
  source.start(at);
  return {
    at,
    setVolume: (next) => gain.gain.setTargetAtTime(next, context.currentTime, fade),
    stop() {
      gain.gain.setTargetAtTime(0, context.currentTime, fade / 3);
      source.stop(context.currentTime + 3 * fade);
    },
  };
}
