/** Where the reports' own page stands. */
const taken = ['index'];

/**
 * Names, without an ending, under which the reports of recordings stand: the recordings' own names, each once even
 * where letters' case doesn't count (two recordings of one name and different kinds; one that is named as the page
 * before the reports).
 *
 * @example outputNames(['a/1.flac', 'a/1.wav', 'index.wav']) // ['a/1', 'a/1-wav', 'index-wav']
 */
export function outputNames(shown: readonly string[]): string[] {
  const used = new Set(taken);
  return shown.map((name) => {
    const plain = name.replace(/\.[^./]*$/, '');
    const longer = name.replace(/\.([^./]*)$/, '-$1');
    let chosen = used.has(plain.toLowerCase()) ? longer : plain;
    for (let n = 2; used.has(chosen.toLowerCase()); n++) chosen = `${longer}-${n}`;
    used.add(chosen.toLowerCase());
    return chosen;
  });
}
