import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilograms } from '../../platform/printing/printed-figures.js';
import { countText } from '../../platform/web/figures-text.js';
import { Balance } from '../../platform/web/kit/balance.js';
import { Table } from '../../platform/web/kit/table.js';
import type { FiguresOfText } from '../../recalls/frozen-figures.js';

const parts = [
  ...(['inStore', 'onDock', 'onVehicle', 'dispatched'] as const),
  ...(['rejects', 'samples', 'retained', 'scrapped', 'unaccounted'] as const),
] as const;

const grams = (milligrams: number): number => Math.round(milligrams / 1000);

/** Where what was produced is, as two bars to one scale and as a table; then the three shares, kept apart. */
export function RecallBalanceParts({ figures }: { readonly figures: FiguresOfText }): VNode {
  const { packs, milligrams, packRates } = figures;
  return (
    <section class="card" aria-labelledby="balance">
      <h2 id="balance">{say('recall-report-balance')}</h2>
      <Balance
        sentence={say(`recall-verdict-${packs.verdict}`, {
          produced: countText(packs.produced),
          held: countText(packs.held),
          dispatched: countText(packs.dispatched),
          used: countText(packs.usedUp),
          unaccounted: countText(packs.unaccounted),
        })}
        inLabel={say('recall-bar-produced')}
        inGrams={grams(milligrams.produced)}
        parts={[
          { label: say('recall-bar-held'), grams: grams(milligrams.held), isOpen: true },
          { label: say('recall-bar-dispatched'), grams: grams(milligrams.dispatched) },
          { label: say('recall-bar-used-up'), grams: grams(milligrams.usedUp) },
        ]}
        gap={{ label: say('recall-bar-unaccounted'), grams: grams(milligrams.unaccounted) }}
      />
      <Sums figures={figures} />
      <p class="quiet">{say('recall-rounded')}</p>
      <Shares figures={figures} />
      {packRates.isContradiction ? <p class="caution">{say('recall-contradiction')}</p> : null}
      {figures.hasAssumed ? <p class="quiet">{say('recall-report-assumed')}</p> : null}
    </section>
  );
}

function Sums({ figures: { packs, milligrams } }: { readonly figures: FiguresOfText }): VNode {
  return (
    <Table
      caption={say('recall-report-sums')}
      columns={[
        { head: say('recall-where') },
        { head: say('recall-packs'), align: 'number' },
        { head: say('recall-kilograms'), align: 'number' },
      ]}
      rows={parts.map((part) => ({
        key: part,
        isLoud: part === 'unaccounted' && (packs.unaccounted !== 0 || milligrams.unaccounted !== 0),
        cells: [say(`recall-part-${part}`), countText(packs[part]), roundKilograms(grams(milligrams[part]))],
      }))}
      foot={[say('recall-part-produced'), countText(packs.produced), roundKilograms(grams(milligrams.produced))]}
    />
  );
}

/** Three answers to three questions: they are never added or averaged. */
function Shares({ figures }: { readonly figures: FiguresOfText }): VNode {
  const { packs, milligrams, packRates, milligramRates, overRecall } = figures;
  const none = say('recall-report-no-share');
  return (
    <dl class="facts">
      <dt>{say('recall-accounted')}</dt>
      <dd>
        {say('recall-share-of-produced', {
          packs: packs.accountedPercent ?? none,
          kilograms: milligrams.accountedPercent ?? none,
        })}
      </dd>
      <dt>{say('recall-recovered')}</dt>
      <dd>
        {say('recall-share-of-dispatched', {
          packs: packRates.recoveryPercent ?? none,
          kilograms: milligramRates.recoveryPercent ?? none,
        })}
      </dd>
      <dt>{say('recall-closed-out')}</dt>
      <dd>
        {say('recall-share-of-dispatched', {
          packs: packRates.closedOutPercent ?? none,
          kilograms: milligramRates.closedOutPercent ?? none,
        })}
      </dd>
      {overRecall === null ? null : (
        <>
          <dt>{say('recall-over')}</dt>
          <dd>{say('recall-over-says', { factor: overRecall })}</dd>
        </>
      )}
    </dl>
  );
}
