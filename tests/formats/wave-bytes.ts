/** Building blocks of wave files, straight from the definitions, for tests of the reader. */

export const u16 = (value: number): number[] => [value & 0xff, (value >> 8) & 0xff];
export const u32 = (value: number): number[] => [...u16(value & 0xffff), ...u16(Math.floor(value / 65536))];
export const u64 = (value: number): number[] => [
  ...u32(value % 2 ** 32),
  ...u32(Math.floor(value / 2 ** 32)),
];
export const ascii = (text: string): number[] => [...text].map((character) => character.charCodeAt(0));

/** A chunk with its pad byte; `size` when it shall state another length. */
export function chunk(id: string, contents: readonly number[], size = contents.length): number[] {
  return [...ascii(id), ...u32(size), ...contents, ...(contents.length % 2 ? [0] : [])];
}

export function wave(chunks: readonly (readonly number[])[], container = 'RIFF'): Uint8Array {
  const contents = [...ascii('WAVE'), ...chunks.flat()];
  return Uint8Array.from([...ascii(container), ...u32(contents.length), ...contents]);
}

export interface FormatFields {
  tag?: number;
  channels?: number;
  sampleRate?: number;
  bits?: number;
  frameBytes?: number;
}

/** The 16 bytes of WAVEFORMAT and the PCM field; 16-bit mono at 48 kHz unless told otherwise. */
export function format(fields: FormatFields = {}): number[] {
  const { tag = 1, channels = 1, sampleRate = 48000, bits = 16 } = fields;
  const { frameBytes = channels * Math.ceil(bits / 8) } = fields;
  return [
    ...u16(tag),
    ...u16(channels),
    ...u32(sampleRate),
    ...u32(sampleRate * frameBytes),
    ...u16(frameBytes),
    ...u16(bits),
  ];
}

/** WAVEFORMATEXTENSIBLE with the sub-format GUID {tag-0000-0010-8000-00AA00389B71}. */
export function extensible(tag: number, validBits: number, fields: FormatFields = {}): number[] {
  const tail = [0x00, 0x00, 0x10, 0x00, 0x80, 0x00, 0x00, 0xaa, 0x00, 0x38, 0x9b, 0x71];
  return [
    ...format({ ...fields, tag: 0xfffe }),
    ...u16(22),
    ...u16(validBits),
    ...u32(0),
    ...u32(tag),
    ...tail,
  ];
}
