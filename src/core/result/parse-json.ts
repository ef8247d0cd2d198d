/** Lists and entries in each other; the deepest document of ours has six. Our judgement. */
const deepest = 100;

/**
 * JSON from outside as a value. Throws `SyntaxError` for what is none, and for lists in lists past any use: they could
 * be read, but nothing could go through them.
 *
 * @example parseJson('{"basedOn":"steady"}') // { basedOn: 'steady' }
 */
export function parseJson(text: string): unknown {
  if (depthOf(text) > deepest) throw new SyntaxError(`more than ${deepest} lists and entries in each other`);
  return JSON.parse(text);
}

function depthOf(text: string): number {
  let [depth, most, quoted] = [0, 0, false];
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (quoted) {
      if (sign === '\\') i += 1;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === '[' || sign === '{') most = Math.max(most, ++depth);
    else if (sign === ']' || sign === '}') depth -= 1;
  }
  return most;
}
