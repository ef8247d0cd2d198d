const prefix = 'error: ';

/** What commander says → how it is said here. Whatever else it says keeps its words. */
const sayings: readonly (readonly [RegExp, string])[] = [
  [
    /^too many arguments.* Expected (\d+) arguments? but got (\d+)\.$/,
    '$2 names stand behind the command, which takes $1. Put a name with spaces in quotes.',
  ],
  [/^missing required argument '(.+)'$/, 'What is missing behind the command is its <$1>.'],
  [/^required option '(.+)' not specified$/, 'This command needs $1. Add it.'],
  [/^option '(--\S+) (.+)' argument missing$/, '$1 has nothing behind it. Write it as $1 $2.'],
];

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
  const saying = sayings.find(([form]) => form.test(said));
  const ours = saying === undefined ? said : said.replace(...saying);
  const sentence = `${ours.charAt(0).toUpperCase()}${ours.slice(1)}`.replace(/[.]?$/, '.');
  const meant = hints.map((hint) => hint.replace(/^\((.*)\)$/, '$1'));
  return `${[sentence, ...meant, `\`${command} --help\` shows what there is.`].join(' ')}\n`;
}
