import type { VNode } from 'preact';
import { mayDo } from '../../platform/actor.js';
import { say } from '../../platform/sentences/sentences.js';
import type { FormTrouble } from '../../platform/web/form-trouble.js';
import { Act, ActLink } from '../../platform/web/kit/act.js';
import { ChoiceEntry, NumberEntry, TextEntry, TimeEntry } from '../../platform/web/kit/entries.js';
import { EntryForm, fieldId } from '../../platform/web/kit/entry-form.js';
import { Table } from '../../platform/web/kit/table.js';
import { localText } from '../../platform/web/local-text.js';
import type { Viewer } from '../../platform/web/request.js';
import { Shell } from '../../platform/web/shell.js';
import { judgedMarkets } from '../run-weights/judged-markets.js';
import type { FormatWithSale } from './format-sales.js';
import { priceText } from './money-text.js';
import { marketsText } from './sale-texts.js';

interface FormatSalesProps {
  readonly viewer: Viewer;
  readonly formats: readonly FormatWithSale[];
  readonly trouble: FormTrouble | null;
}

/** Where each format is sold and what a kilogram is worth: what pages and reports go by where nothing else is chosen. */
export function formatSalesPage(props: FormatSalesProps): VNode {
  const { viewer, formats } = props;
  return (
    <Shell title={say('sale-title')} viewer={viewer}>
      <p class="quiet">{say('sale-says')}</p>
      <p class="caution">{say('fill-law-caution')}</p>
      <Table
        caption={say('sale-list')}
        columns={[
          { head: say('sale-format') },
          { head: say('sale-markets') },
          { head: say('field-name-price-per-kilogram'), align: 'number' },
          { head: say('sale-since') },
        ]}
        rows={formats.map(({ formatId, formatName, sale }) => ({
          key: formatId,
          cells: [
            formatName,
            sale === null ? say('sale-not-said') : marketsText(sale.markets),
            sale?.pricePerKilogram == null ? '–' : priceText(sale.pricePerKilogram, sale.currency),
            sale === null ? '–' : localText(sale.validFrom, viewer.timeZone),
          ],
        }))}
        empty={say('sale-no-formats')}
      />
      {mayDo(viewer.actor.roles, 'set-up-plant') && formats.length > 0 ? <SaleForm {...props} /> : null}
      <div class="acts">
        <ActLink href="/set-up" says={say('sale-to-set-up')} />
      </div>
    </Shell>
  );
}

function SaleForm({ viewer, formats, trouble }: FormatSalesProps): VNode {
  return (
    <section class="card" aria-labelledby="set-sale">
      <h2 id="set-sale">{say('sale-set')}</h2>
      <EntryForm viewer={viewer} action="/set-up/sales" trouble={trouble} id="sale-form">
        <ChoiceEntry
          name="formatId"
          label={say('sale-format')}
          required
          trouble={trouble}
          choices={formats.map(({ formatId, formatName }) => ({ value: formatId, says: formatName }))}
        />
        <Markets trouble={trouble} />
        <NumberEntry
          name="pricePerKilogram"
          label={say('field-name-price-per-kilogram')}
          hint={say('line-fill-price-hint')}
          trouble={trouble}
        />
        <TextEntry
          name="currency"
          label={say('field-name-currency')}
          hint={say('sale-currency-hint')}
          isCode
          maxLength={3}
          trouble={trouble}
        />
        <TimeEntry
          name="validFrom"
          label={say('sale-since')}
          hint={say('sale-since-hint')}
          timeZone={viewer.timeZone}
          trouble={trouble}
        />
        <Act says={say('sale-set')} />
      </EntryForm>
    </section>
  );
}

/** Boxes to tick, in the order in which markets are shown. */
function Markets({ trouble }: { readonly trouble: FormTrouble | null }): VNode {
  const chosen = [trouble?.entered['markets'] ?? []].flat();
  const wrong = trouble?.fields['markets'];
  return (
    <fieldset class="tiles" id={fieldId('markets')} data-field="markets" tabIndex={-1}>
      <legend>{say('field-name-markets')}</legend>
      <div>
        {judgedMarkets.map((market) => (
          <label key={market} class="tile">
            <input type="checkbox" name="markets" value={market} checked={chosen.includes(market)} />
            <span>{say(`run-weights-market-${market}`)}</span>
          </label>
        ))}
      </div>
      <p class="wrong" hidden={wrong === undefined}>
        {wrong}
      </p>
    </fieldset>
  );
}
