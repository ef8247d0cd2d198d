/** Bytes before the sound in an ADTS frame (ISO/IEC 14496-3, 1.A.2.2): two more with a check sum. */
export const adtsHeaderBytes = (frame: Uint8Array): number => ((frame[1] ?? 0) & 1 ? 7 : 9);

/**
 * What a decoder has to know of AAC, as MP4 files state it (AudioSpecificConfig, ISO/IEC 14496-3, 1.6.2.1), out of the
 * header of an ADTS frame.
 *
 * @example adtsConfig(Uint8Array.of(0xff, 0xf1, 0x50, 0x80, 0, 0x1f, 0xfc)) // 0x12, 0x10: LC, 44100 Hz, 2 channels
 */
export function adtsConfig(frame: Uint8Array): Uint8Array {
  const [, , third = 0, fourth = 0] = frame;
  const kind = (third >> 6) + 1;
  const rate = (third >> 2) & 15;
  const channels = ((third & 1) << 2) | (fourth >> 6);
  return Uint8Array.of((kind << 3) | (rate >> 1), ((rate & 1) << 7) | (channels << 3));
}
