import { expect, it } from 'vitest';
import { crc32 } from '../../src/formats/crc32.ts';

it('gives the check value of CRC-32/ISO-HDLC', () => {
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  expect(crc32(new Uint8Array())).toBe(0);
});
