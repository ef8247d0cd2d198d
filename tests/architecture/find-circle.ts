/** The first circle in a graph, as the nodes along it with the first one again at the end; undefined without one. */
export function findCircle(graph: ReadonlyMap<string, Iterable<string>>): string[] | undefined {
  const done = new Set<string>();
  const path: string[] = [];

  function visit(node: string): string[] | undefined {
    if (path.includes(node)) return [...path.slice(path.indexOf(node)), node];
    if (done.has(node)) return undefined;
    path.push(node);
    for (const next of graph.get(node) ?? []) {
      const circle = visit(next);
      if (circle !== undefined) return circle;
    }
    path.pop();
    done.add(node);
    return undefined;
  }

  for (const node of graph.keys()) {
    const circle = visit(node);
    if (circle !== undefined) return circle;
  }
  return undefined;
}
