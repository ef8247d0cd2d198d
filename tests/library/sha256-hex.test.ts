import { expect, it } from 'vitest';
import { sha256Hex } from '../../src/library/sha256-hex.ts';

// FIPS 180-2, appendix B.1 and B.2, and the digest of nothing from NIST's SHA test vectors (SHA256ShortMsg, Len = 0).
it('gives the published digests', async () => {
  expect(await sha256Hex('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(await sha256Hex('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  );
  expect(await sha256Hex(new Uint8Array())).toBe(
    'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  );
});

it('takes a part of a buffer for itself alone', async () => {
  const bytes = new TextEncoder().encode('xabcx').subarray(1, 4);
  expect(await sha256Hex(bytes)).toBe(await sha256Hex('abc'));
});
