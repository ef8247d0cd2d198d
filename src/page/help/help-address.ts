/** Pages of the help by the file that they come from. */
export const helpFiles: Readonly<Record<string, string>> = {
  'for-students.md': 'for-students',
  'for-teachers.md': 'for-teachers',
  'handbook.md': 'measures',
  'scores.md': 'scores',
  'glossary.md': 'words',
};

/**
 * Address in the page of what a help file links to; null where that is no part of the help.
 *
 * @example helpAddress('for-students.md', '../../core/scoring/scores.md') // '#/help/scores'
 */
export function helpAddress(from: string, href: string): string | null {
  const [path = '', anchor] = href.split('#');
  const page = helpFiles[path === '' ? from : path.replace(/^.*\//, '')];
  if (page === undefined) return null;
  return `#/help/${page}${anchor === undefined ? '' : `/${anchor}`}`;
}
