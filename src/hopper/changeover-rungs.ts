/**
 * The five rungs of a changeover, in their order; none can be skipped. The first four come before the first run of the new
 * format, the last with its first packs. Our own order, common practice, no source.
 */
export const changeoverRungs = [
  'last-pack-out',
  'hopper-empty',
  'reject-bin-closed',
  'film-back',
  'code-checked',
] as const;
export type RungWord = (typeof changeoverRungs)[number];

/** Those that must be done before a run of the new format may start. */
export const rungsBeforeStart: readonly RungWord[] = changeoverRungs.slice(0, 4);
