import type { VNode } from 'preact';
import type { HeadsOfWeights } from '../../core/weight-blocks/heads-of-weights.js';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import { gramsText } from '../weight-text.js';
import { riskOfHeads, type HeadCompared } from './compared-heads.js';

interface HeadsProps {
  readonly heads: readonly HeadCompared[];
  readonly nominalMilligrams: number;
  /** Accepted packs that stand in no row. */
  readonly untold: Pick<HeadsOfWeights, 'noHeadPackCount' | 'zeroOrNoHeadPackCount'>;
}

/** The heads of the filler side by side, and in plain words which of them fills otherwise. */
export function HeadsOfRun({ heads, nominalMilligrams, untold }: HeadsProps): VNode {
  const off = heads.filter(({ isOff }) => isOff);
  return (
    <>
      {off.map((head) => (
        <p key={head.head} class="sentence">
          {offText(head)}
        </p>
      ))}
      <p class="quiet">
        {off.length === 0 ? `${say('run-weights-heads-alike')} ` : null}
        {say('run-weights-heads-test', { percent: riskOfHeads * 100 })}
      </p>
      <Untold of={untold} />
      <Table
        caption={say('run-weights-heads-compared')}
        columns={[
          { head: say('run-weights-head') },
          ...['weights-packs', 'weights-one-of-means', 'weights-one-of-deviations'].map(number),
          ...['run-weights-head-beyond', 'run-weights-head-share', 'run-weights-head-off'].map(number),
        ]}
        rows={heads.map((head) => ({
          key: String(head.head),
          cells: cellsOf(head, nominalMilligrams),
          isLoud: head.isOff,
        }))}
      />
    </>
  );
}

/** How many packs are compared with none, as nobody knows which head filled them. */
function Untold({ of: { noHeadPackCount, zeroOrNoHeadPackCount } }: { readonly of: HeadsProps['untold'] }): VNode {
  return (
    <>
      {noHeadPackCount === 0 ? null : <p>{say('run-weights-no-head', { count: countText(noHeadPackCount) })}</p>}
      {zeroOrNoHeadPackCount === 0 ? null : (
        <p>{say('run-weights-zero-or-no-head', { count: countText(zeroOrNoHeadPackCount) })}</p>
      )}
    </>
  );
}

const number = (code: string) => ({ head: say(code), align: 'number' }) as const;

/** `Head 7 fills 1.8 g less than the others.` */
export function offText({ head, fromOthersMilligrams }: HeadCompared): string {
  const milligrams = fromOthersMilligrams ?? 0;
  return say(milligrams < 0 ? 'run-weights-head-less' : 'run-weights-head-more', {
    head,
    grams: gramsText(Math.abs(milligrams)),
  });
}

function cellsOf(head: HeadCompared, nominalMilligrams: number): readonly string[] {
  const { packCount, beyondT1Count, standardDeviationMilligrams: deviation, fromOthersMilligrams: off } = head;
  return [
    String(head.head),
    countText(packCount),
    gramsText(nominalMilligrams + head.meanErrorMilligrams, 2),
    deviation === null ? '–' : gramsText(deviation, 2),
    countText(beyondT1Count),
    `${gramsText((beyondT1Count / packCount) * 100_000, 2)} %`,
    off === null ? '–' : `${off > 0 ? '+' : ''}${gramsText(off, 2)}`,
  ];
}
