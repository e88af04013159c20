import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readerOf } from '../../test/support/a-bag.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from '../../test/support/a-delivery.js';
import { aReleasedPallet } from '../../test/support/a-pallet.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { palletPage } from '../pallets/pallet-list.js';
import { palletView } from '../pallets/pallet-views.js';
import { palletListPage, palletSinglePage } from '../pallets/pallet.page.js';
import type { ReadFrom } from '../platform/database/reading.js';
import { renderPage } from '../platform/web/render-page.js';
import type { Viewer } from '../platform/web/request.js';
import { deliveryPage } from './deliveries.js';
import { deliveryView } from './delivery-views.js';
import { deliveryListPage, deliverySinglePage } from './delivery.page.js';
import { paperPage } from './paper-list.js';
import { paperListPage } from './paper-list.page.js';
import { VoidDeliveryNote } from './void-delivery-note.js';

let house: TestHouse;
let plant: Plant;
let reader: ReadFrom;
let viewer: Viewer;
let deliveryId: string;
let palletId: string;
let voidNumber: string;

/** A delivery that left, with a void note and its next version. */
beforeAll(async () => {
  house = await openHouse();
  plant = await aPlant(house);
  reader = readerOf(house);
  viewer = {
    actor: plant.actor,
    name: 'Oskar <b>Penn</b>',
    siteName: 'Alder Quay',
    timeZone: 'Europe/Berlin',
    language: 'en',
    csrfToken: 'token',
    ...{ said: null, deviceCode: null, proof: 'password' as const, journalSequence: 0 },
    path: '/deliveries',
  };
  const pallet = await aReleasedPallet(house, plant);
  palletId = pallet.id;
  deliveryId = await aDelivery(house, plant, { orderNumber: '<i>45</i>' });
  await palletLoaded(house, plant, deliveryId, pallet.sscc);
  voidNumber = (await deliveryClosed(house, plant, deliveryId, { blindCount: 1 })).noteNumber;
  await vehicleLeft(house, plant, deliveryId);
  await house
    .get(VoidDeliveryNote)
    .execute(asking(plant.actor), deliveryId, { correction: 'incorrect-data', reason: 'seal misread' });
});
afterAll(async () => {
  await house.close();
});

/** Codes without a sentence are shown as they are; none may be left on a page. */
const bareCode = />\s*(?:pallet|delivery|papers|note|descent)-[a-z-]+/;

function checked(html: string): string {
  expect(html).not.toMatch(bareCode);
  expect(html).not.toMatch(/\{\w+\}/);
  expect(html).not.toMatch(/ style=|<script(?! src=| type="module" src=)|<i>45/);
  return html;
}

describe('the pages of pallets and deliveries', () => {
  it('list pallets and show one: how it stands, what is on it, its bags', async () => {
    const pallets = await palletPage(reader, plant.siteId, { before: null, limit: 50 });
    const list = checked(renderPage(palletListPage({ viewer, pallets, older: null })));
    expect(list).toContain(`/pallets/${palletId}`);
    const pallet = await palletView(reader, plant.siteId, palletId);
    const single = checked(renderPage(palletSinglePage({ viewer, pallet })));
    for (const words of ['Released', 'dispatched', 'L6071A1', '960.0 kg', '990.8 kg', 'caution']) {
      expect(single.replaceAll(/<\/?span[^>]*>/g, '').toLowerCase()).toContain(words.toLowerCase());
    }
  });

  it('list deliveries and show one: needed, on and left, the vehicle, what went, the papers with the void one', async () => {
    const deliveries = await deliveryPage(reader, plant.siteId, { before: null, limit: 50 });
    const list = checked(renderPage(deliveryListPage({ viewer, deliveries, older: deliveryId })));
    expect(list).toContain('&lt;i>45&lt;/i>');
    expect(list).toContain(`/deliveries?before=${deliveryId}`);
    const delivery = await deliveryView(reader, plant.siteId, deliveryId, house.clock.now());
    const single = checked(renderPage(deliverySinglePage({ viewer, delivery })));
    for (const words of ['960', '480', 'AQ 123 D', 'The loading space is clean', voidNumber, 'VOID: seal misread']) {
      expect(single).toContain(words);
    }
  });

  it('offer the hold that anybody may place, big enough for gloves on a shared device, and not to who only looks', async () => {
    const pallet = await palletView(reader, plant.siteId, palletId);
    const delivery = await deliveryView(reader, plant.siteId, deliveryId, house.clock.now());
    const pagesFor = (who: Viewer): readonly string[] => [
      renderPage(palletSinglePage({ viewer: who, pallet })),
      renderPage(deliverySinglePage({ viewer: who, delivery })),
    ];
    const [ofPallet, ofDelivery] = pagesFor({ ...viewer, deviceCode: 'TAB-1' });
    expect(ofPallet).toContain(`href="/quality/holds/new?kind=pallet&amp;id=${palletId}"`);
    expect(ofPallet).toContain('<body class="tablet"');
    expect(ofDelivery).toContain(`href="/quality/holds/new?kind=delivery&amp;id=${deliveryId}"`);
    const auditor: Viewer = { ...viewer, actor: { ...viewer.actor, roles: ['auditor'] } };
    for (const page of pagesFor(auditor)) expect(page).not.toContain('/holds/new');
  });

  it('list all papers, the void ones with the reason', async () => {
    const papers = await paperPage(reader, plant.siteId, { before: null, limit: 50 });
    const list = checked(renderPage(paperListPage({ viewer, papers, older: null })));
    expect(list).toContain(voidNumber);
    expect(list).toContain('VOID: seal misread');
  });
});
