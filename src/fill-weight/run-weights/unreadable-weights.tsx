import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import type { UnreadableWeights } from '../kept/kept-weights.js';

/** A list that nobody reads to its end says how many more there are. */
const mostListed = 20;

/** Weights that were dropped, in one sentence, and each damaged block by its name. */
export function UnreadableOfRun({ of }: { readonly of: readonly UnreadableWeights[] }): VNode | null {
  if (of.length === 0) return null;
  const damaged = of.filter(({ reason }) => reason !== 'dropped');
  const shown = damaged.slice(0, mostListed);
  return (
    <>
      <h2>{say('run-weights-unreadable')}</h2>
      {unreadableTexts(of).map((text) => (
        <p key={text}>{text}</p>
      ))}
      {damaged.length === 0 ? null : (
        <Table
          caption={say('run-weights-damaged')}
          columns={[
            { head: say('run-weights-block'), align: 'code' },
            { head: say('run-weights-sequences') },
            { head: say('weights-packs'), align: 'number' },
            { head: say('run-weights-why') },
          ]}
          rows={shown.map((block) => ({ key: block.id, cells: damagedCells(block), isLoud: true }))}
        />
      )}
      {damaged.length > mostListed ? (
        <p>{say('run-weights-more-blocks', { count: damaged.length - mostListed })}</p>
      ) : null}
    </>
  );
}

/** How many weights were dropped, how many are damaged, and what still holds them. */
export function unreadableTexts(blocks: readonly UnreadableWeights[]): readonly string[] {
  const packsOf = (own: readonly UnreadableWeights[]) => own.reduce((sum, { weightCount }) => sum + weightCount, 0);
  const dropped = packsOf(blocks.filter(({ reason }) => reason === 'dropped'));
  const damaged = packsOf(blocks.filter(({ reason }) => reason !== 'dropped'));
  if (dropped + damaged === 0) return [];
  return [
    ...(dropped === 0 ? [] : [say('run-weights-dropped-says', { count: countText(dropped) })]),
    ...(damaged === 0 ? [] : [say('run-weights-damaged-says', { count: countText(damaged) })]),
    say('run-weights-unreadable-says'),
  ];
}

/** The block by its name, its sequences, how many packs, and why. */
export function damagedCells(block: UnreadableWeights): readonly string[] {
  const { id, firstSequence, lastSequence, weightCount, reason } = block;
  return [
    id,
    `${countText(firstSequence)} – ${countText(lastSequence)}`,
    countText(weightCount),
    say(`weights-damage-${reason}`),
  ];
}
