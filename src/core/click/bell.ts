import { anyBetween } from '../stats/any-between.ts';
import { type Attack, soundLead } from './click-seed.ts';

/** The metronome's second sound and the clicks that have it. */
interface Bell {
  readonly sound: Float32Array;
  /** Number of the first bell found. */
  readonly first: number;
  /** Clicks at which it was surely heard. */
  readonly votes: readonly number[];
  has(k: number): boolean;
}

/** A bell comes on every second to eighth click. */
const cycles = [2, 3, 4, 5, 6, 7, 8] as const;
/**
 * An attack this near to a click's time is taken for the bell itself, s. Measured, as the next: half to twice finds the
 * same bells.
 */
const onTheGrid = 0.0004;
/** Share of the bell's power that may be left over where it is taken for heard. */
const heardLeft = 0.12;
const mostModels = 8;

const mod = (a: number, b: number) => ((a % b) + b) % b;

/**
 * Looks among the clicks that don't sound like the others for one sound that comes on every n-th. Strokes cover most
 * of them, so the cycle is a vote: places where the sound lies exactly, against places where the common click does.
 * A sound exactly one click ahead of a count-in is a bell even when no other is heard.
 */
export function findBell({
  timeOf,
  heard,
  common,
  attacks,
  learn,
  isThere,
}: {
  /** Start of click k's sound, s. */
  readonly timeOf: (k: number) => number;
  readonly heard: readonly { readonly k: number }[];
  /** The sound of the clicks heard. */
  readonly common: Float32Array;
  /** In order of time. */
  readonly attacks: readonly Attack[];
  /** The sound that these clicks have in common. */
  readonly learn: (places: readonly number[]) => Float32Array;
  readonly isThere: (k: number, sound: Float32Array, limit: number) => boolean;
}): Bell | null {
  const sure = new Set(heard.map(({ k }) => k));
  const [first, last] = [heard[0]!.k, heard.at(-1)!.k];
  const open: number[] = [];
  for (let k = first - 1; k <= last + 1; k++) {
    // A common click with a stroke close behind it is no bell.
    if (!sure.has(k) && !isThere(k, common, heardLeft)) open.push(k);
  }
  const times = attacks.map(({ time }) => time);
  const models = open.filter((k) => {
    const due = timeOf(k) + soundLead;
    return anyBetween(times, due - onTheGrid, due + onTheGrid);
  });
  const kinds = models.slice(0, mostModels).map((model) => {
    return { model, sound: learn([model]), like: [] as number[] };
  });
  // Click by click, so that each is read but once.
  for (const k of open) {
    for (const { model, sound, like } of kinds) {
      if (k === model || isThere(k, sound, heardLeft)) like.push(k);
    }
  }
  let best: { readonly cycle: number; readonly votes: readonly number[] } | null = null;
  for (const { model, like } of kinds) {
    for (const cycle of cycles) {
      const onCycle = (k: number) => mod(k - model, cycle) === 0;
      if (heard.some(({ k }) => onCycle(k)) || !open.some((k) => k !== model && onCycle(k))) continue;
      const votes = like.filter(onCycle);
      const stray = like.length - votes.length;
      if (votes.length - stray > (best?.votes.length ?? 1)) best = { cycle, votes };
    }
  }
  if (best !== null) {
    const { cycle, votes } = best;
    const residue = mod(votes[0]!, cycle);
    const sound = learn(votes);
    return { sound, first: votes[0]!, votes, has: (k) => mod(k, cycle) === residue };
  }
  const ahead = models.includes(first - 1);
  if (!ahead) return null;
  const sound = learn([first - 1]);
  return { sound, first: first - 1, votes: [first - 1], has: (k) => k === first - 1 };
}
