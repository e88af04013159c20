import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import type { SentenceFacts } from '../../platform/refusal.js';
import { countText, kilogramsText } from '../../platform/web/figures-text.js';
import { Act } from '../../platform/web/kit/act.js';
import { ChoiceEntry } from '../../platform/web/kit/entries.js';
import { Table } from '../../platform/web/kit/table.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import type { ReachedBag } from '../../tracing/hold-reach.js';
import type { PalletLine } from '../../tracing/thread.js';
import type { NamedUnit, NarrowChoice } from './narrow.js';

interface NarrowChoiceProps extends NarrowChoice {
  readonly viewer: Viewer;
  readonly chosen: {
    readonly bagIds?: readonly string[] | null;
    readonly palletIds?: readonly string[] | null;
    readonly lotIds?: readonly string[] | null;
    readonly run?: string | null;
    readonly fromAt?: string | null;
    readonly untilAt?: string | null;
  };
  readonly refusal: { readonly code: string; readonly facts: SentenceFacts } | null;
}

/** What is to be taken out of a hold: chosen from all that it reaches now. */
export function narrowChoicePage({ viewer, hold, reached, lots, runs, chosen, refusal }: NarrowChoiceProps): VNode {
  const { possible, bags } = reached.reach;
  const ticked = new Set([chosen.bagIds ?? [], chosen.palletIds ?? [], chosen.lotIds ?? []].flat());
  const heldBags = bags.filter(({ bag, isOut }) => !isOut && bag.id !== hold.scopeId);
  const pallets = possible.filter(({ palletId }) => palletId !== hold.scopeId);
  return (
    <Shell title={say('narrow-title', { hold: hold.number })} viewer={viewer}>
      {refusal === null ? null : (
        <section class="card refusal" role="alert">
          <p>{say(refusal.code, refusal.facts)}</p>
        </section>
      )}
      <p class="sentence">{say('narrow-says', { subject: reached.subject })}</p>
      <form class="card" method="get" action={`/quality/holds/${hold.id}/narrow`}>
        <input type="hidden" name="look" value="1" />
        {heldBags.length === 0 ? null : <BagTicks bags={heldBags} ticked={ticked} />}
        {lots.length === 0 ? null : <LotTicks lots={lots} ticked={ticked} />}
        {runs.length === 0 ? null : <Minutes runs={runs} chosen={chosen} />}
        <PalletTicks pallets={pallets} ticked={ticked} />
        <p>
          <Act says={say('narrow-look')} />
        </p>
      </form>
      <p>
        <a href={`/quality/holds/${hold.id}`}>{say('narrow-back')}</a>
      </p>
    </Shell>
  );
}

function tick(name: string, id: string, says: string, ticked: ReadonlySet<string>): VNode {
  return (
    <label class="tick">
      <input type="checkbox" name={name} value={id} checked={ticked.has(id)} />
      <span class="code">{says}</span>
    </label>
  );
}

interface TicksProps {
  readonly ticked: ReadonlySet<string>;
}

function BagTicks({ bags, ticked }: TicksProps & { readonly bags: readonly ReachedBag[] }): VNode {
  return (
    <Table
      caption={say('narrow-bags')}
      columns={[
        { head: say('group-bag') },
        { head: say('bags-column-where') },
        { head: say('bag-net'), align: 'number' },
      ]}
      rows={bags.map(({ bag }) => ({
        key: bag.id,
        cells: [
          tick('bagIds', bag.id, bag.number, ticked),
          say(`bag-status-${bag.status}`),
          bag.netGrams === null ? '–' : kilogramsText(bag.netGrams),
        ],
      }))}
    />
  );
}

function LotTicks({ lots, ticked }: TicksProps & { readonly lots: readonly NamedUnit[] }): VNode {
  return (
    <fieldset class="ticks">
      <legend>{say('narrow-lots')}</legend>
      {lots.map(({ id, name }) => tick('lotIds', id, name, ticked))}
    </fieldset>
  );
}

function Minutes({ runs, chosen }: Pick<NarrowChoiceProps, 'runs' | 'chosen'>): VNode {
  return (
    <fieldset class="ticks">
      <legend>{say('narrow-minutes')}</legend>
      <p class="hint">{say('narrow-minutes-says')}</p>
      <ChoiceEntry
        name="run"
        label={say('narrow-run')}
        choices={runs.map(({ id, name }) => ({ value: id, says: name }))}
        value={chosen.run ?? undefined}
      />
      {(['fromAt', 'untilAt'] as const).map((name) => (
        <div key={name} class="field">
          <label for={name}>{say(`narrow-${name}`)}</label>
          <input id={name} name={name} type="datetime-local" value={chosen[name] ?? undefined} />
        </div>
      ))}
    </fieldset>
  );
}

function PalletTicks({ pallets, ticked }: TicksProps & { readonly pallets: readonly PalletLine[] }): VNode {
  return (
    <Table
      caption={say('narrow-pallets')}
      columns={[
        { head: say('thread-pallet') },
        { head: say('desk-lot'), align: 'code' },
        { head: say('thread-packs'), align: 'number' },
        { head: say('reach-word') },
        { head: say('narrow-status') },
        { head: say('thread-where') },
      ]}
      rows={pallets.map((pallet) => ({
        key: pallet.palletId,
        cells: [
          tick('palletIds', pallet.palletId, pallet.sscc, ticked),
          pallet.lotCodes.join(', '),
          countText(pallet.packCount),
          say(`link-${pallet.word}`),
          say(`pallet-is-${pallet.status}`),
          pallet.deliveryNumber ?? pallet.placeCode ?? '–',
        ],
      }))}
    />
  );
}
