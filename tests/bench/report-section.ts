import { existsSync, readFileSync, writeFileSync } from 'node:fs';

/** `text` with the section under `## heading` put in place of the one of that name, or at the end. */
export function withSection(text: string, heading: string, body: string): string {
  const sections = text.trimEnd().split(/\n+(?=## )/);
  const section = `## ${heading}\n\n${body.trim()}`;
  const at = sections.findIndex((one) => one.split('\n', 1)[0] === `## ${heading}`);
  return `${(at < 0 ? [...sections, section] : sections.with(at, section)).join('\n\n')}\n`;
}

/** What stands under `## heading`, or null. */
export function sectionOf(text: string, heading: string): string | null {
  const sections = text.trimEnd().split(/\n+(?=## )/);
  const found = sections.find((one) => one.split('\n', 1)[0] === `## ${heading}`);
  return found === undefined ? null : found.slice(`## ${heading}`.length).trim();
}

/** Writes one section of a report that several programs write; the others stay. */
export function writeSection(report: string, title: string, heading: string, body: string): void {
  const path = new URL(`../../reports/${report}`, import.meta.url);
  const text = existsSync(path) ? readFileSync(path, 'utf8') : `# ${title}\n`;
  writeFileSync(path, withSection(text, heading, body));
}
