/**
 * Names of sample codings by their registered format tag (RFC 2361, appendix A; FLAC's tag is common practice).
 * Only linear PCM and IEEE float are read; the others are named so that a fault can say what was found.
 */
export const waveCodings: ReadonlyMap<number, string> = new Map([
  [0x0001, 'PCM'],
  [0x0002, 'Microsoft ADPCM'],
  [0x0003, 'IEEE float'],
  [0x0006, 'A-law'],
  [0x0007, 'µ-law'],
  [0x0010, 'OKI ADPCM'],
  [0x0011, 'IMA ADPCM'],
  [0x0014, 'G.723 ADPCM'],
  [0x0031, 'GSM 6.10'],
  [0x0040, 'G.721 ADPCM'],
  [0x0050, 'MPEG layer 1 or 2'],
  [0x0055, 'MP3'],
  [0xf1ac, 'FLAC'],
]);

export const pcmTag = 0x0001;
export const floatTag = 0x0003;
/** The real tag stands in the first field of the sub-format GUID. */
export const extensibleTag = 0xfffe;
