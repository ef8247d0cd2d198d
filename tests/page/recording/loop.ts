import { convolve } from '../../../fixtures/generator/convolve.ts';
import { type Microphone, plainMicrophone, record } from '../../../fixtures/generator/microphone.ts';
import { addNoise } from '../../../fixtures/generator/noise.ts';
import { seeded } from '../../../fixtures/generator/random.ts';
import { roomResponse } from '../../../fixtures/generator/room.ts';
import { rooms } from '../../../fixtures/generator/rooms.ts';

/** What lies between a loudspeaker's input and the recording. */
export interface Loop {
  readonly delay: number;
  readonly gainDb: number;
  readonly noiseDb: number | null;
  readonly room: number | null;
  readonly microphone: Microphone;
  readonly seed: number;
}

export const plainLoop: Loop = {
  delay: 0.0412,
  gainDb: -8,
  noiseDb: -65,
  room: null,
  microphone: plainMicrophone,
  seed: 1,
};

/** What is played, as it comes back through a loop; the delay may fall between samples. */
export function throughLoop(
  played: Float32Array,
  sampleRate: number,
  change: Partial<Loop> = {},
): Float32Array {
  const { delay, gainDb, noiseDb, room, microphone, seed } = { ...plainLoop, ...change };
  const random = seeded(seed);
  const shift = delay * sampleRate;
  const whole = Math.floor(shift);
  const part = shift - whole;
  const gain = 10 ** (gainDb / 20);
  let air: Float64Array = new Float64Array(played.length + whole + 1);
  // Sinc interpolation under a cosine window: the pulses lie far below half the sampling rate.
  for (let n = 0; n < played.length; n++) {
    const x = gain * played[n]!;
    if (x === 0) continue;
    for (let k = -16; k <= 16; k++) {
      const u = k - part;
      const sinc = Math.abs(u) < 1e-9 ? 1 : Math.sin(Math.PI * u) / (Math.PI * u);
      const at = n + whole + k;
      if (at >= 0 && at < air.length) air[at]! += x * sinc * Math.cos((Math.PI * u) / 34) ** 2;
    }
  }
  if (room !== null) air = convolve(air, roomResponse(rooms[room]!, sampleRate, random.fork('room')));
  if (noiseDb !== null) addNoise(air, 'pink', noiseDb, sampleRate, random.fork('noise'));
  record(air, microphone, sampleRate, random.fork('microphone'));
  return Float32Array.from(air.subarray(0, played.length));
}
