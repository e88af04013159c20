interface Profile {
  readonly nodes: readonly { readonly id: number; readonly callFrame: Frame; readonly children?: readonly number[] }[];
  readonly samples: readonly number[];
  readonly timeDeltas: readonly number[];
}

interface Frame {
  readonly functionName: string;
  readonly url: string;
}

/** Where a server's time goes: by the innermost frame that belongs to one of these. */
const parts: readonly (readonly [string, RegExp])[] = [
  ['encoding', /core\/weight-blocks|encode-batches|canonical-text/],
  ['storing', /better-sqlite3|node_modules\/pg|typeorm|\/journal\/|platform\/database|received-ranges/],
  ['reading the lines', /incoming\/(read-weights|ndjson|csv|instant|text-numbers|weight-rows|sent-weight)/],
  ['checking', /incoming\/|receive-weights|sequence-ranges/],
];
const idle = new Set(['(idle)', '(program)', '(root)']);

/** The share of each part in the busy time between two instants of the run, from a profile of V8. */
export function profileShares(text: string, lastSeconds: number): Record<string, number> {
  const { nodes, samples, timeDeltas } = JSON.parse(text) as Profile;
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const parent = new Map(nodes.flatMap(({ id, children }) => (children ?? []).map((child) => [child, id] as const)));
  const partOf = (id: number): string => {
    for (let at: number | undefined = id; at !== undefined; at = parent.get(at)) {
      const url = byId.get(at)?.callFrame.url ?? '';
      const found = parts.find(([, pattern]) => pattern.test(url));
      if (found !== undefined) return found[0];
    }
    return 'network and the rest';
  };
  const total = timeDeltas.reduce((sum, delta) => sum + delta, 0);
  const spent: Record<string, number> = {};
  let [at, busy] = [0, 0];
  for (const [place, id] of samples.entries()) {
    const delta = timeDeltas[place] ?? 0;
    at += delta;
    if (at < total - lastSeconds * 1e6 || idle.has(byId.get(id)?.callFrame.functionName ?? '')) continue;
    const part = partOf(id);
    spent[part] = (spent[part] ?? 0) + delta;
    busy += delta;
  }
  return Object.fromEntries(Object.entries(spent).map(([part, microseconds]) => [part, microseconds / busy]));
}
