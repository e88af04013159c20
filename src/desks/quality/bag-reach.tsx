import type { VNode } from 'preact';
import { say } from '../../platform/sentences/sentences.js';
import { countText } from '../../platform/web/figures-text.js';
import { Figures } from '../../platform/web/kit/figures.js';
import type { BagReach } from '../../tracing/bag-reach.js';
import { tonnesText } from './reach.page.js';

/** If this bag were bad: what a recall of it would cover, hop by hop. */
export function BagReachBox({ reach }: { readonly reach: BagReach }): VNode {
  const { possible, lots, wholeLots, palletCount, onVehicleCount, awayCount, customers } = reach;
  return (
    <section class="card" aria-labelledby="reach">
      <h2 id="reach">{say('bag-reach-if-bad')}</h2>
      {possible.packCount === 0 ? (
        <p>{say('bag-reach-nowhere')}</p>
      ) : (
        <>
          <Figures
            of={[
              { label: say('bag-reach-possible'), value: tonnesText(possible.grams), unit: 't' },
              { label: say('bag-reach-lots'), value: countText(lots.length) },
              { label: say('bag-reach-pallets'), value: countText(palletCount) },
              { label: say('bag-reach-customers'), value: countText(customers.length) },
            ]}
          />
          <p>
            {say('bag-reach-lot-codes')}{' '}
            {lots.map(({ lotId, code }, place) => (
              <span key={lotId}>
                {place === 0 ? '' : ', '}
                <a class="code" href={`/quality/lots/${lotId}`}>
                  {code}
                </a>
              </span>
            ))}
            .{' '}
            {say('bag-reach-whole-lots', {
              tonnes: tonnesText(wholeLots.grams),
              packs: countText(wholeLots.packCount),
            })}
          </p>
          <p>
            {say('bag-reach-where', {
              ...{
                packs: countText(possible.packCount),
                away: countText(awayCount),
                loaded: countText(onVehicleCount),
              },
              here: countText(palletCount - awayCount - onVehicleCount),
            })}
          </p>
          {customers.length === 0 ? null : (
            <ul>
              {customers.map((customer) => (
                <li key={customer.customerId}>
                  {say('bag-reach-customer', {
                    ...{ customer: customer.customerName, deliveries: customer.deliveryNumbers.join(', ') },
                    ...{ pallets: countText(customer.palletCount), packs: countText(customer.packCount) },
                  })}
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </section>
  );
}
