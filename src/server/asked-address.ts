/**
 * The path of a request's target, decoded once, without its query; null for anything that isn't a plain path: another
 * form of target, a broken escape, a zero or a backslash, a step upwards however it is written.
 *
 * @example askedAddress('/assets/a%20b.js?x') // '/assets/a b.js'
 */
export function askedAddress(target: string): string | null {
  if (!target.startsWith('/')) return null;
  const [path = ''] = target.split(/[?#]/);
  let decoded: string;
  try {
    decoded = decodeURIComponent(path);
  } catch {
    return null;
  }
  // Written twice over, %252e stays %2e here; a path of ours holds neither.
  if (/[\0\\%]/.test(decoded)) return null;
  return decoded.split('/').some((part) => part === '..' || part === '.') ? null : decoded;
}
