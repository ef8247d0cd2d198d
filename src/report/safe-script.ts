/** A bundle made safe to stand in a script element; digests for a policy are taken of this text. */
export function safeScript(bundle: string): string {
  return bundle.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
}
