/** A profile as V8 writes it: calls as a tree, and which of them each sample found running. */
export interface CpuProfile {
  readonly nodes: readonly {
    readonly id: number;
    readonly callFrame: { readonly functionName: string };
    readonly children?: readonly number[];
  }[];
  readonly samples: readonly number[];
  /** Microseconds since the sample before. */
  readonly timeDeltas: readonly number[];
}

/** Milliseconds by job. */
export type TimeShares = ReadonlyMap<string, number>;

/**
 * How long each job ran: a job is the functions of its names and all that they call, but for what another job is inside
 * them; `rest` is what belongs to none.
 *
 * @example timeShares(profile, { listening: ['hearStrokes'] }, 'rest').get('listening') // 240
 */
export function timeShares(
  { nodes, samples, timeDeltas }: CpuProfile,
  jobs: Readonly<Record<string, readonly string[]>>,
  rest: string,
): TimeShares {
  const jobOfName = new Map(Object.entries(jobs).flatMap(([job, names]) => names.map((name) => [name, job])));
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const jobOf = new Map<number, string>();
  const walk = (id: number, job: string): void => {
    const node = byId.get(id)!;
    const own = jobOfName.get(node.callFrame.functionName) ?? job;
    jobOf.set(id, own);
    for (const child of node.children ?? []) walk(child, own);
  };
  const children = new Set(nodes.flatMap((node) => node.children ?? []));
  for (const { id } of nodes) if (!children.has(id)) walk(id, rest);
  const shares = new Map([...Object.keys(jobs), rest].map((job) => [job, 0]));
  samples.forEach((id, i) => {
    const job = jobOf.get(id)!;
    shares.set(job, shares.get(job)! + (timeDeltas[i] ?? 0) / 1000);
  });
  return shares;
}
