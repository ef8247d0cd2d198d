import type { Microphone } from '../../../src/page/recording/open-microphone.ts';

/** A microphone that hears what the page sends to its loudspeaker, so many frames later, and a little noise. */
export function loopBack(sampleRate: number, frames: number, gainDb: number): Microphone {
  const context = new AudioContext({ sampleRate });
  const delay = new DelayNode(context, { maxDelayTime: 1, delayTime: frames / sampleRate });
  const gain = new GainNode(context, { gain: 10 ** (gainDb / 20) });
  const heard = new GainNode(context);
  const noise = new AudioBuffer({ length: 2 * sampleRate, numberOfChannels: 1, sampleRate });
  let state = 1;
  noise.copyToChannel(
    Float32Array.from({ length: noise.length }, () => {
      state = (state * 48271) % 2147483647;
      return 0.001 * (state / 1073741823.5 - 1);
    }),
    0,
  );
  const source = new AudioBufferSourceNode(context, { buffer: noise, loop: true });
  source.connect(heard);
  source.start();
  delay.connect(gain).connect(heard);
  const connect = AudioNode.prototype.connect as (this: AudioNode, target: AudioNode) => AudioNode;
  AudioNode.prototype.connect = function (this: AudioNode, target: AudioNode) {
    if (target === context.destination) connect.call(this, delay);
    return connect.call(this, target);
  } as typeof AudioNode.prototype.connect;
  const stream = new MediaStream();
  const track = new MediaStreamAudioDestinationNode(context).stream.getAudioTracks()[0]!;
  return {
    context,
    stream,
    track,
    input: heard,
    deviceId: 'loop',
    label: 'Loop',
    session: 'first',
    settings: {
      echoCancellation: false,
      noiseSuppression: false,
      autoGainControl: false,
      sampleRate,
      channels: 1,
    },
    close: () => void context.close(),
  };
}
