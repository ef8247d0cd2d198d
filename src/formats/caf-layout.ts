import type { CafParts } from './caf-parts.ts';
import { type SampleLayoutOutcome, sampleLayout } from './sample-layout.ts';

const isFloat = 1;
const isLittleEndian = 2;

/** Format and samples of a CAF file that holds plain samples (`lpcm`). */
export function cafLayout(parts: CafParts): SampleLayoutOutcome {
  const { flags, packetBytes, channels, sampleRate, bits, data } = parts;
  if (data === null) return { ok: false, fault: { code: 'no-data', facts: {} } };
  const sampleBytes = channels > 0 && packetBytes > 0 ? packetBytes / channels : Math.ceil(bits / 8);
  if (!Number.isInteger(sampleBytes) || sampleBytes * 8 < bits)
    return {
      ok: false,
      fault: { code: 'frame-size-contradiction', facts: { frameBytes: packetBytes, channels, bits } },
    };
  const coding = (flags & isFloat) !== 0 ? 'float' : 'integer';
  const bigEndian = (flags & isLittleEndian) === 0;
  return sampleLayout(
    { coding, channels, sampleRate, bits, sampleBytes, bigEndian, signedBytes: true },
    data,
  );
}
