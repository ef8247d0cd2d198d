import FFT from 'fft.js';

const length = 512;
const hop = 128;

/**
 * A suppressor of steady noise as telephones have it: the spectrum's own running minimum is taken for noise, and each
 * band is turned down by the share of noise in it (Wiener's gain), to `floorDb` at most. Samples come back as late as
 * they went in.
 */
export function suppressSteady(samples: Float32Array, sampleRate: number, floorDb = -18): Float32Array {
  const fft = new FFT(length);
  const window = Float64Array.from({ length }, (_, n) => Math.sin((Math.PI * (n + 0.5)) / length));
  const out = new Float64Array(samples.length + length);
  const least = new Float64Array(length / 2 + 1).fill(1e-12);
  const smooth = new Float64Array(length / 2 + 1);
  const rise = 10 ** (hop / sampleRate / 0.25);
  const floor = 10 ** (floorDb / 20);
  const scale = (2 * hop) / length;
  for (let from = -length; from < samples.length; from += hop) {
    const block = fft.createComplexArray();
    for (let n = 0; n < length; n++) block[2 * n] = window[n]! * (samples[from + n] ?? 0);
    const spectrum = fft.createComplexArray();
    fft.transform(spectrum, block);
    for (let k = 0; k <= length / 2; k++) {
      const power = spectrum[2 * k]! ** 2 + spectrum[2 * k + 1]! ** 2;
      smooth[k] = 0.7 * smooth[k]! + 0.3 * power;
      least[k] = Math.max(1e-12, Math.min(smooth[k]!, least[k]! * rise));
      const gain = Math.max(floor, 1 - (2 * least[k]!) / Math.max(power, 1e-15));
      for (const i of k === 0 || k === length / 2 ? [k] : [k, length - k]) {
        spectrum[2 * i]! *= gain;
        spectrum[2 * i + 1]! *= gain;
      }
    }
    const back = fft.createComplexArray();
    fft.inverseTransform(back, spectrum);
    for (let n = 0; n < length; n++) {
      const at = from + n;
      if (at >= 0 && at < out.length) out[at]! += scale * window[n]! * back[2 * n]!;
    }
  }
  return Float32Array.from(out.subarray(0, samples.length));
}
