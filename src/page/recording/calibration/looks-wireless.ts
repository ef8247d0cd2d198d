/** Words in an output's name that say it is a wireless one. Names of systems and drivers; quoted from memory. */
const wirelessWords =
  /bluetooth|wireless|hands[- ]?free|\ba2dp\b|\bhfp\b|\bbt\b|\bble\b|\bble audio\b|\bbuds?\b|earbud|\bpods?\b/i;

/** Longer than any wired output takes, s; wireless ones take 0.1 to 0.5 s. Common practice. */
const wirelessLatency = 0.1;

/**
 * Why an output is taken for a wireless one, or null. A wireless output's delay isn't steady enough to say anything of
 * ahead or behind.
 *
 * @example looksWireless('Headset (Bluetooth)', null) // 'name'
 */
export function looksWireless(label: string, latency: number | null): 'name' | 'latency' | null {
  if (wirelessWords.test(label)) return 'name';
  return latency !== null && latency > wirelessLatency ? 'latency' : null;
}
