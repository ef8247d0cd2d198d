import { XmlElement } from '@rgrove/parse-xml';

/** Elements directly inside an element, of one name where it is given. */
export function childrenOf(element: XmlElement, name?: string): XmlElement[] {
  return element.children.filter(
    (child): child is XmlElement =>
      child instanceof XmlElement && (name === undefined || child.name === name),
  );
}

/** The first element at a path of names, or undefined. */
export function elementAt(element: XmlElement, ...path: readonly string[]): XmlElement | undefined {
  let at: XmlElement | undefined = element;
  for (const name of path) at = at && childrenOf(at, name)[0];
  return at;
}

/** Text at a path of names, trimmed; empty where there is none. */
export function textAt(element: XmlElement, ...path: readonly string[]): string {
  return elementAt(element, ...path)?.text.trim() ?? '';
}

/** Number at a path, or null where there is none. */
export function numberAt(element: XmlElement, ...path: readonly string[]): number | null {
  const text = textAt(element, ...path);
  const value = Number(text);
  return text === '' || !Number.isFinite(value) ? null : value;
}
