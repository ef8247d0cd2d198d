const prefix = 'error: ';

/**
 * What commander says of a command line, as sentences of ours: without its prefix, with what to do next. A text
 * without that prefix is a command's own and stays as it is.
 *
 * @example usageSentence("error: unknown option '--bmp'\n(Did you mean --bpm?)\n", 'evenhand grade')
 * // "Unknown option '--bmp'. Did you mean --bpm? `evenhand grade --help` shows what there is.\n"
 */
export function usageSentence(text: string, command: string): string {
  if (!text.startsWith(prefix)) return text;
  const [said = '', ...hints] = text.slice(prefix.length).trim().split('\n');
  const sentence = `${said.charAt(0).toUpperCase()}${said.slice(1)}`.replace(/[.]?$/, '.');
  const meant = hints.map((hint) => hint.replace(/^\((.*)\)$/, '$1'));
  return `${[sentence, ...meant, `\`${command} --help\` shows what there is.`].join(' ')}\n`;
}
