/** mulberry32: uniform numbers in [0, 1) from a seed. */
export const seeded = (seed: number) => {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const between = (a: number, b: number): number => a + (b - a) * uniform();
  const whole = (a: number, b: number): number => Math.floor(between(a, b + 1));
  return { uniform, normal, between, whole };
};
