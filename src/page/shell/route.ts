import { useEffect, useState } from 'preact/hooks';

/** What the part of the address behind # says: `#/takes/17?shared` → name takes, parts ['17'], asks 'shared'. */
export interface Route {
  readonly name: string;
  readonly parts: readonly string[];
  readonly asks: string;
}

/**
 * Reads an address's part behind #.
 *
 * @example readRoute('#/takes/17?shared') // { name: 'takes', parts: ['17'], asks: 'shared' }
 */
export function readRoute(hash: string): Route {
  const [path = '', asks = ''] = hash.replace(/^#?\/?/, '').split('?');
  const [name = '', ...parts] = path.split('/').map(plainly);
  return { name, parts: parts.filter((part) => part !== ''), asks };
}

function plainly(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export function useRoute(): Route {
  const [route, setRoute] = useState(() => readRoute(location.hash));
  useEffect(() => {
    const follow = () => setRoute(readRoute(location.hash));
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, []);
  return route;
}

/** Goes to another view. */
export function goTo(path: string): void {
  location.hash = `#/${path}`;
}
