import { expect, it } from 'vitest';
import { recordingKind } from '../../src/formats/recording-kind.ts';
import { ascii } from './wave-bytes.ts';

// First bytes as the formats' own publications define them (PNG: ISO/IEC 15948 5.2; PDF: ISO 32000; FLAC: RFC 9639;
// Ogg: RFC 3533; ISO base media: ISO/IEC 14496-12; MIDI: SMF 1.0; AU and AIFF: their makers; the rest from memory).
it.each([
  ['png', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  ['jpeg', [0xff, 0xd8, 0xff, 0xe0]],
  ['gif', ascii('GIF89a')],
  ['pdf', ascii('%PDF-1.7')],
  ['zip', [0x50, 0x4b, 0x03, 0x04]],
  ['mp3', ascii('ID3\x04')],
  ['mp3', [0xff, 0xfb, 0x90, 0x64]],
  ['aac', [0xff, 0xf1, 0x50, 0x80]],
  ['flac', ascii('fLaC')],
  ['ogg', ascii('OggS')],
  ['m4a', ascii('\0\0\0\x1cftypM4A ')],
  ['mp4', ascii('\0\0\0\x18ftypisom')],
  ['quicktime', ascii('\0\0\0\x14ftypqt  ')],
  ['3gp', ascii('\0\0\0\x18ftyp3gp4')],
  ['webm', [0x1a, 0x45, 0xdf, 0xa3]],
  ['aiff', ascii('FORM\0\0\0\x10AIFF')],
  ['caf', ascii('caff\0\x01')],
  ['au', ascii('.snd')],
  ['amr', ascii('#!AMR\n')],
  ['midi', ascii('MThd\0\0\0\x06')],
  ['wave64', [...ascii('riff'), 0x2e, 0x91, 0xcf, 0x11]],
  ['wma', [0x30, 0x26, 0xb2, 0x75, 0x8e, 0x66, 0xcf, 0x11]],
  ['riff', ascii('RIFF')],
  ['riff', ascii('BW64')],
  ['text', ascii('line one\r\n\tline two\n')],
  ['text', [...new TextEncoder().encode('Übung für zwei Hände')]],
  ['unknown', [0, 1, 2, 3]],
  ['unknown', []],
] as const)('knows %s', (kind, bytes) => {
  expect(recordingKind(Uint8Array.from(bytes))).toBe(kind);
});
