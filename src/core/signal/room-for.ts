/**
 * So many samples of silence to write to: the beginning of `room` where that is large enough, else an array of their own.
 *
 * @example roomFor(3).length // 3
 */
export function roomFor(count: number, room?: Float32Array): Float32Array {
  if (room === undefined || room.length < count) return new Float32Array(count);
  return room.subarray(0, count).fill(0);
}
