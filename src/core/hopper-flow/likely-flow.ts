export interface SourceShare {
  readonly additionId: string;
  readonly grams: number;
}

export interface TargetShare {
  readonly exitId: string;
  readonly grams: number;
}

/** What one exit is made of: the sources, oldest first, and what nothing poured so far explains, sum to its grams. */
export interface ExitComposition {
  readonly exitId: string;
  readonly grams: number;
  readonly sources: readonly SourceShare[];
  readonly unexplainedGrams: number;
}

/**
 * A hopper period by a flow model. Whatever the model: an exit's sources and its unexplained grams sum to the exit, and
 * an addition's grams over all exits and inside sum to the addition. Models that mix give fractions of a gram.
 */
export interface LikelyFlow {
  readonly additionIds: ReadonlySet<string>;
  /** In the order in which they left. */
  readonly exitIds: readonly string[];
  /**
   * @param exitId of `exitIds`
   * @throws RangeError when it is not in the flow
   */
  readonly compositionOf: (exitId: string) => ExitComposition;
  /** What is left at the end, oldest first. */
  readonly inside: readonly SourceShare[];
}

/**
 * What a set of exits is made of, together.
 * @param exitIds each at most once; none at all gives no sources
 * @returns the sources in the order in which they left first, and what nothing explains; together they sum to the
 * exits' grams
 * @throws RangeError when an exit is not in the flow
 * @example
 * likelySourcesOf(flow, ['pallet']) // { sources: [{ additionId: 'heel', grams: 500 }, …], unexplainedGrams: 0 }
 */
export function likelySourcesOf(
  flow: LikelyFlow,
  exitIds: Iterable<string>,
): { readonly sources: readonly SourceShare[]; readonly unexplainedGrams: number } {
  let unexplainedGrams = 0;
  const ids = [...exitIds];
  for (const exitId of ids) unexplainedGrams += flow.compositionOf(exitId).unexplainedGrams;
  const sources = Array.from(likelyGramsOf(flow, ids), ([additionId, grams]) => ({ additionId, grams }));
  return { sources, unexplainedGrams };
}

/**
 * The same by addition, without what nothing explains.
 * @param exitIds each at most once; none at all gives nothing
 * @returns grams by the addition's id, in the order in which they left first
 * @throws RangeError when an exit is not in the flow
 * @example likelyGramsOf(flow, ['pallet']) // Map { 'heel' → 500, 'A' → 500 }
 */
export function likelyGramsOf(flow: LikelyFlow, exitIds: Iterable<string>): ReadonlyMap<string, number> {
  const gramsByAdditionId = new Map<string, number>();
  for (const exitId of exitIds) {
    for (const { additionId, grams } of flow.compositionOf(exitId).sources) {
      gramsByAdditionId.set(additionId, (gramsByAdditionId.get(additionId) ?? 0) + grams);
    }
  }
  return gramsByAdditionId;
}

/**
 * Where parts of additions went, together; what is not listed is still inside.
 * @param shareByAdditionId how much of each addition is asked for, 0 to 1: 1 for a bag, less for a residue or a rework bin
 * that holds some of it; none at all gives no targets
 * @param exitIds among which exits to look; all of them unless said
 * @returns the exits with anything of them, in the order asked
 * @throws RangeError when an addition or an exit is not in the flow
 * @example likelyTargetsOf(flow, new Map([['A', 1]])) // [{ exitId: 'pallet', grams: 500 }]
 */
export function likelyTargetsOf(
  flow: LikelyFlow,
  shareByAdditionId: ReadonlyMap<string, number>,
  exitIds: readonly string[] = flow.exitIds,
): readonly TargetShare[] {
  for (const additionId of shareByAdditionId.keys()) {
    if (!flow.additionIds.has(additionId)) throw new RangeError(`addition ${additionId} is not in the flow`);
  }
  if (shareByAdditionId.size === 0) return [];
  return exitIds.flatMap((exitId): readonly TargetShare[] => {
    const parts = flow.compositionOf(exitId).sources.map(({ additionId, grams }) => {
      return grams * (shareByAdditionId.get(additionId) ?? 0);
    });
    const grams = parts.reduce((sum, part) => sum + part, 0);
    return grams > 0 ? [{ exitId, grams }] : [];
  });
}

/**
 * Finds exits by their id.
 * @returns a function that throws a RangeError for an exit that is not among them
 * @example findExit([pallet])('pallet') // pallet
 */
export function findExit<Exit extends { readonly exitId: string }>(exits: readonly Exit[]): (exitId: string) => Exit {
  const exitById = new Map<string, Exit>();
  for (const exit of exits) exitById.set(exit.exitId, exit);
  return (exitId) => {
    const exit = exitById.get(exitId);
    if (exit === undefined) throw new RangeError(`exit ${exitId} is not in the flow`);
    return exit;
  };
}
