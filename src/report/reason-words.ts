import type { Reason } from '../core/result/take-result.ts';

/** The sentence of a code with its facts. */
export function reasonWords({ code, facts }: Reason): string {
  const details = Object.entries(facts).map(([name, value]) => `${name} ${value}`);
  return `${code.replaceAll('-', ' ')}${details.length === 0 ? '' : ` (${details.join(', ')})`}`;
}
