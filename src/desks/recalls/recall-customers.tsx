import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { roundKilograms } from '../../platform/printing/printed-figures.js';
import { countText } from '../../platform/web/figures-text.js';
import { Table } from '../../platform/web/kit/table.js';
import type { FiguresOfText } from '../../recalls/frozen-figures.js';
import { threadLink } from '../../tracing/thread-text.js';
import type { CustomerNames } from './customer-names.js';

type ShownCustomer = FiguresOfText['customers'][number];

interface CustomersProps {
  readonly figures: FiguresOfText;
  readonly names: CustomerNames;
  /** The recall whose notices are to be sent; null before it is opened. */
  readonly recallId: string | null;
}

/** Whom to tell: what each got, by which papers, and what it says became of it. */
export function RecallCustomers({ figures, names, recallId }: CustomersProps): VNode {
  const { customers, respondedCount } = figures;
  return (
    <section class="card" aria-labelledby="customers">
      <h2 id="customers">{say('recall-report-customers')}</h2>
      <p class="sentence">{say('recall-customers-say', { count: customers.length, answered: respondedCount })}</p>
      <Table
        caption={say('recall-customers-caption')}
        hasHiddenCaption
        columns={[
          { head: say('thread-customer') },
          { head: say('recall-documents') },
          { head: say('recall-lots'), align: 'code' },
          { head: say('recall-pallets'), align: 'number' },
          { head: say('recall-packs'), align: 'number' },
          { head: say('recall-kilograms'), align: 'number' },
          { head: say('recall-open-at-customer'), align: 'number' },
        ]}
        rows={customers.map((customer) => ({
          key: customer.customerId,
          isLoud: recallId !== null && !customer.hasAnswered,
          cells: [
            <Who key="who" customer={customer} names={names} />,
            <Documents key="documents" customer={customer} recallId={recallId} />,
            [...new Set(customer.deliveries.flatMap(({ lotCodes }) => lotCodes))].join(', '),
            countText(customer.palletCount + customer.bagCount),
            countText(customer.packCount),
            roundKilograms(Math.round(customer.milligrams / 1000)),
            countText(customer.packRates.openAtCustomers),
          ],
        }))}
        empty={say('recall-no-customers')}
      />
    </section>
  );
}

function Who({ customer, names }: { readonly customer: ShownCustomer; readonly names: CustomerNames }): VNode {
  const known = names.get(customer.customerId);
  return (
    <>
      {known?.name ?? customer.code}
      {known?.telephone == null ? null : (
        <small>
          <br />
          {known.telephone}
        </small>
      )}
    </>
  );
}

/** The papers that went with the goods, and the notice that is to go now. */
function Documents({
  customer,
  recallId,
}: {
  readonly customer: ShownCustomer;
  readonly recallId: string | null;
}): VNode {
  return (
    <>
      {customer.deliveries.map(({ deliveryId, number, notePaperId }) => (
        <div key={deliveryId}>
          <a href={notePaperId === null ? threadLink(number) : `/papers/${notePaperId}/file`}>{number}</a>
        </div>
      ))}
      {recallId === null ? null : (
        <a href={`/quality/recalls/${recallId}/notices/${customer.customerId}`}>{say('recall-notice')}</a>
      )}
    </>
  );
}
