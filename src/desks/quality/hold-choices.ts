import { findDelivery, loadedUnitsOf } from '../../dispatch/deliveries.js';
import { holdNewPath } from '../../disposition/hold-link.js';
import { bagOf, bagsOf } from '../../drying/bulk-bags.js';
import { bagsOfLinerLot } from '../../drying/liner-lots.js';
import { rangesOfLot, runOf } from '../../packing/packing-runs.js';
import { palletsOf } from '../../pallets/pallet-list.js';
import { contentsOf } from '../../pallets/pallet-list.js';
import { printedSscc } from '../../platform/printing/printed-figures.js';
import type { ReadFrom } from '../../platform/database/reading.js';
import { say } from '../../platform/sentences/sentences.js';
import type { Finding } from '../finding.js';
import type { HoldChoice } from './hold-new.page.js';
import type { HoldSubject } from './hold-new.js';

/** What a typed code may mean, to be chosen from. A liner lot is held by the bags of it. */
export async function choicesOfFinding(
  from: ReadFrom,
  siteId: string,
  { subject, about }: Finding,
  next: string | null,
): Promise<readonly HoldChoice[]> {
  const { kind, id } = subject;
  if (kind === 'liner-lot') return bagChoices(await bagsOf(from, await bagsOfLinerLot(from, siteId, id)), next);
  const says = say(`thread-title-${kind}`, { name: subject.name, at: subject.localTime ?? '' });
  return [{ href: holdNewPath(kind, id, next), says, about }];
}

function bagChoices(
  bags: readonly { readonly id: string; readonly number: string }[],
  next: string | null,
): HoldChoice[] {
  return bags.map(({ id, number }) => ({
    href: holdNewPath('bulk-bag', id, next),
    says: `${say('scope-bulk-bag')} ${number}`,
    about: '',
  }));
}

/** A delivery is held by what stands on it. */
export async function choicesOfDelivery(
  from: ReadFrom,
  { siteId, deliveryId }: { readonly siteId: string; readonly deliveryId: string },
  next: string | null,
): Promise<readonly HoldChoice[]> {
  const { id } = await findDelivery(from, siteId, deliveryId);
  const { palletIds, bagIds } = await loadedUnitsOf(from, id);
  const pallets = await palletsOf(from, palletIds);
  const bags = await bagsOf(from, bagIds);
  return [
    ...pallets.map(({ id, sscc, formatName }) => ({
      href: holdNewPath('pallet', id, next),
      says: `${say('scope-pallet')} ${printedSscc(sscc)}`,
      about: formatName,
    })),
    ...bagChoices(bags, next),
  ];
}

/** Where the same fault may lie wider or narrower: a bag's dryer run, a lot's runs, the lots on a pallet. */
export async function widerChoices(
  from: ReadFrom,
  { kind, id }: HoldSubject,
  next: string | null,
): Promise<readonly HoldChoice[]> {
  if (kind === 'bulk-bag') {
    const { dryerRunId } = await bagOf(from, id);
    const says = say('hold-other-dryer-run');
    return dryerRunId === null ? [] : [{ href: holdNewPath('dryer-run', dryerRunId, next), says, about: '' }];
  }
  if (kind === 'pallet') {
    const lots = new Map((await contentsOf(from, [id])).map(({ lotId, lotCode }) => [lotId, lotCode]));
    return [...lots].map(([lotId, lot]) => ({
      href: holdNewPath('lot', lotId, next),
      says: say('hold-other-lot', { lot }),
      about: '',
    }));
  }
  if (kind !== 'lot') return [];
  const runIds = [...new Set((await rangesOfLot(from, id)).map(({ runId }) => runId))];
  const runs = await Promise.all(runIds.map((runId) => runOf(from, runId)));
  return runs.map((run) => ({
    href: holdNewPath('packing-run', run.id, next),
    says: say('hold-other-run', { run: run.number }),
    about: '',
  }));
}
