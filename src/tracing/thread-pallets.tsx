import type { VNode } from 'preact';
import { say } from '../platform/sentences/sentences.js';
import { Table } from '../platform/web/kit/table.js';
import { amountCells, amountColumns } from './thread-sources.js';
import { threadLink } from './thread-text.js';
import type { CustomerLine, PalletLine } from './thread.js';

interface PalletsProps {
  /** Code of the caption. */
  readonly caption: string;
  readonly pallets: readonly PalletLine[];
}

/** Pallets that may hold the same sugar, and where they are. */
export function Pallets({ caption, pallets }: PalletsProps): VNode | null {
  if (pallets.length === 0) return null;
  return (
    <Table
      caption={say(caption, { count: pallets.length })}
      columns={[
        { head: say('thread-pallet'), align: 'code' },
        { head: say('thread-code'), align: 'code' },
        { head: say('thread-packs'), align: 'number' },
        ...amountColumns(),
        { head: say('thread-where') },
        { head: say('thread-customer') },
      ]}
      rows={pallets.map((pallet) => ({
        key: pallet.palletId,
        cells: [
          <PalletCode key="pallet" pallet={pallet} />,
          <Codes key="lots" codes={pallet.lotCodes} />,
          pallet.packCount,
          ...amountCells(pallet),
          `${say(`pallet-is-${pallet.status}`)}${pallet.placeCode === null ? '' : ` · ${pallet.placeCode}`}`,
          <Customer key="customer" pallet={pallet} />,
        ],
      }))}
    />
  );
}

function PalletCode({ pallet }: { readonly pallet: PalletLine }): VNode {
  return (
    <>
      <a href={threadLink(pallet.sscc)}>{pallet.sscc}</a>
      {pallet.isSubject ? (
        <small>
          <br />
          {say('thread-holds-subject')}
        </small>
      ) : null}
    </>
  );
}

function Customer({ pallet }: { readonly pallet: PalletLine }): VNode {
  return (
    <>
      {pallet.customerName}
      {pallet.deliveryNumber === null ? null : (
        <small>
          <br />
          <a href={threadLink(pallet.deliveryNumber)}>{pallet.deliveryNumber}</a>
        </small>
      )}
    </>
  );
}

/** Codes one after the other, each leading to its thread. */
function Codes({ codes }: { readonly codes: readonly string[] }): VNode {
  return (
    <>
      {codes.map((code, place) => (
        <span key={code}>
          {place === 0 ? '' : ', '}
          <a href={threadLink(code)}>{code}</a>
        </span>
      ))}
    </>
  );
}

/** Who got it. */
export function Customers({ customers }: { readonly customers: readonly CustomerLine[] }): VNode | null {
  if (customers.length === 0) return null;
  return (
    <Table
      caption={say('thread-customers')}
      columns={[
        { head: say('thread-customer') },
        { head: say('thread-deliveries') },
        { head: say('thread-pallet-count'), align: 'number' },
        { head: say('thread-packs'), align: 'number' },
        { head: say('thread-bag-count'), align: 'number' },
      ]}
      rows={customers.map((customer) => ({
        key: customer.customerId,
        cells: [
          customer.customerName,
          <Codes key="deliveries" codes={customer.deliveryNumbers} />,
          customer.palletCount,
          customer.packCount,
          customer.bagCount,
        ],
      }))}
    />
  );
}
