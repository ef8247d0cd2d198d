const commentOrString =
  /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\[\s\S])*`/g;

/** Source text without comments; strings stay. */
export function withoutComments(source: string): string {
  return source.replace(commentOrString, (found) => (found.startsWith('/') ? ' ' : found));
}

const importForms = [
  // import … from, export … from; the bindings hold no quote, bracket or semicolon
  /^\s*(?:import|export)\s[^'"`;()=]*?\bfrom\s*['"]([^'"\n]+)['"]/gm,
  /^\s*import\s*['"]([^'"\n]+)['"]/gm,
  /\bimport\s*\(\s*['"`]([^'"`\n]+)['"`]/g,
];

/** Every module that a source text names in an import, type imports and lazy ones included. */
export function scanImports(source: string): string[] {
  const text = withoutComments(source);
  return importForms.flatMap((form) => [...text.matchAll(form)].map((match) => match[1]!));
}
