import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText, kilogramsText } from '../../platform/web/figures-text.js';
import { Act } from '../../platform/web/kit/act.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { PlantReach, ReachSum } from '../../tracing/plant-reach.js';

interface PlantReachProps {
  readonly viewer: Viewer;
  readonly days: { readonly fromOn: string; readonly untilOn: string };
  readonly reach: PlantReach | null;
  /** Why these days are not read. */
  readonly refusal: string | null;
}

/** Tonnes, to a tenth: what a recall is spoken of in. */
export function tonnesText(grams: number): string {
  return kilogramsText(Math.round(grams / 100_000) * 100);
}

/** If a bag were bad, how much would a recall of it cover? The plant's mean and worst, and what one more empty a shift would do. */
export function plantReachPage({ viewer, days, reach, refusal }: PlantReachProps): VNode {
  return (
    <Shell title={say('bag-reach-title')} viewer={viewer}>
      <p class="sentence">{say('bag-reach-says')}</p>
      <form class="card" method="get" action="/quality/reach">
        {(['from', 'until'] as const).map((name) => (
          <div key={name} class="field">
            <label for={`reach-${name}`}>{say(`bag-reach-${name}`)}</label>
            <input
              id={`reach-${name}`}
              name={name}
              type="date"
              value={name === 'from' ? days.fromOn : days.untilOn}
              required
            />
          </div>
        ))}
        <p>
          <Act says={say('bag-reach-look')} />
        </p>
      </form>
      {refusal === null ? null : (
        <p class="card refusal" role="alert">
          {refusal}
        </p>
      )}
      {reach === null ? null : <Reach reach={reach} />}
    </Shell>
  );
}

function Reach({ reach }: { readonly reach: PlantReach }): VNode {
  const { bagCount, asIs, withEmpties, shrinkPercent, worst } = reach;
  if (bagCount === 0) return <p>{say('bag-reach-no-bags')}</p>;
  const facts = {
    ...{ mean: tonnesText(asIs.meanGrams), worst: tonnesText(asIs.worstGrams), percent: String(shrinkPercent) },
    ...{ less: tonnesText(withEmpties.meanGrams), empties: countText(withEmpties.emptyCount) },
  };
  return (
    <>
      <p class="sentence">{say('bag-reach-answer', facts)}</p>
      <p class="sentence">{say('bag-reach-with-empties', facts)}</p>
      <Table
        caption={say('bag-reach-sum')}
        columns={[
          { head: say('bag-reach-case') },
          { head: say('bag-reach-total'), align: 'number' },
          { head: say('bag-reach-bags'), align: 'number' },
          { head: say('bag-reach-mean'), align: 'number' },
          { head: say('bag-reach-worst'), align: 'number' },
        ]}
        rows={[
          { key: 'as-is', cells: cellsOf(say('bag-reach-as-is'), asIs, bagCount) },
          {
            key: 'with-empties',
            cells: cellsOf(say('bag-reach-had-empties', { empties: facts.empties }), withEmpties, bagCount),
          },
        ]}
      />
      <p class="quiet">{say('bag-reach-how')}</p>
      <Table
        caption={say('bag-reach-worst-bags')}
        columns={[
          { head: say('bag-reach-bag'), align: 'code' },
          { head: say('bag-reach-tonnes'), align: 'number' },
        ]}
        rows={worst.map(({ bagId, number, grams }) => ({
          key: bagId,
          cells: [<a href={`/quality/bags/${bagId}?reach=true#reach`}>{number}</a>, tonnesText(grams)],
        }))}
      />
    </>
  );
}

function cellsOf(name: string, { totalGrams, meanGrams, worstGrams }: ReachSum, bagCount: number): readonly string[] {
  return [name, tonnesText(totalGrams), countText(bagCount), tonnesText(meanGrams), tonnesText(worstGrams)];
}
