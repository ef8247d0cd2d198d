/** Complaints about one packet after which its decoder is taken to go round in a circle. */
const mostComplaints = 200;

/**
 * Does a piece of work whose library writes every fault of a damaged file to the console, which has to stay the
 * program's own. Throws where the complaints don't end.
 *
 * @example quietly(() => console.error('lost sync')) // nothing is written
 */
export function quietly<T>(work: () => T): T {
  const { error } = console;
  let complaints = 0;
  console.error = () => {
    complaints += 1;
    if (complaints > mostComplaints) throw new Error('The decoder found no way out of a damaged packet.');
  };
  try {
    return work();
  } finally {
    console.error = error;
  }
}
