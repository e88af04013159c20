import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { aBag, readerOf } from './support/a-bag.js';
import { aDelivery, deliveryClosed, palletLoaded, vehicleLeft } from './support/a-delivery.js';
import { aReleasedPallet } from './support/a-pallet.js';
import { aPerson, signedIn, type SignedInPerson } from './support/a-person.js';
import { aPlant, type Plant } from './support/a-plant.js';
import { asking, openHouse, type TestHouse } from './support/house.js';
import { bagFacts, lotFacts, noteFacts, palletFacts } from './support/paper-facts.js';
import { symbolsOf, textOf } from './support/read-pdf.js';
import { deliveryNote } from '../src/dispatch/delivery-note.paper.js';
import { VoidDeliveryNote } from '../src/dispatch/void-delivery-note.js';
import { renderBagLabel } from '../src/drying/bulk-bag.label.js';
import { PrintBagLabel } from '../src/drying/print-bag-label.js';
import { lotLabel } from '../src/packing/lot.label.js';
import { LabelPallet } from '../src/pallets/label-pallet.js';
import { palletLabel } from '../src/pallets/pallet.label.js';
import { SetPaperLanguage } from '../src/plant/set-paper-language.js';
import type { Canonical } from '../src/platform/canonical-text.js';
import { UnitOfWork } from '../src/platform/database/unit-of-work.js';
import { SystemIds } from '../src/platform/ids.js';
import { issuePaper } from '../src/platform/printing/issue-paper.js';
import { inPaperLanguage } from '../src/platform/printing/paper-language.js';
import { Papers } from '../src/platform/printing/papers.js';
import { inConversation, type Language } from '../src/platform/sentences/language.js';

let house: TestHouse;
let plant: Plant;

beforeEach(async () => {
  house = await openHouse();
  plant = await aPlant(house);
});
afterEach(async () => {
  await house.close();
});

const bytesOf = async (paperId: string) => (await house.get(Papers).fileOf(paperId)).bytes;
const wordsOf = async (paperId: string) => textOf(await bytesOf(paperId)).replaceAll('\u00a0', ' ');

function forCustomer(paperLanguage: Language | null): Promise<unknown> {
  return house.get(SetPaperLanguage).forCustomer(asking(plant.actor), plant.customerId, { paperLanguage });
}

function forSite(paperLanguage: Language): Promise<unknown> {
  return house.get(SetPaperLanguage).forSite(asking(plant.actor), { paperLanguage });
}

async function aClosedDelivery(): Promise<{ readonly delivery: string; readonly paperId: string }> {
  const pallet = await aReleasedPallet(house, plant);
  const delivery = await aDelivery(house, plant);
  await palletLoaded(house, plant, delivery, pallet.sscc);
  const { paperId } = await deliveryClosed(house, plant, delivery, { blindCount: 1 });
  return { delivery, paperId };
}

async function factsOf(paperId: string): Promise<Record<string, unknown>> {
  const [row] = await readerOf(house).sql<{ facts: string }>`SELECT "facts" FROM "paper" WHERE "id" = ${paperId}`;
  return JSON.parse(row?.facts ?? 'null') as Record<string, unknown>;
}

const englishWords = /\b(Delivery note|Lot|pallets|Packs|Gross|Net|Scale|version|page|Together|Loaded|haulier)\b/;

describe('a delivery note', () => {
  it('speaks the language of its customer, dates and decimals too, whoever closes the delivery', async () => {
    await forCustomer('es');
    const { paperId } = await inConversation(aClosedDelivery, 'en');
    const words = await wordsOf(paperId);
    for (const part of [
      'Albarán',
      'PRECINTO',
      'Palé (SSCC)',
      'Paquetes',
      'Bruto del palé, kg',
      'En total',
      'Recibido',
    ]) {
      expect(words).toContain(part);
    }
    // Planned for 12 March, left on Thursday 12 March; 2 kg a pack.
    expect(words).toContain('12 MAR 2026');
    expect(words).toContain('jue, 12 mar 2026');
    expect(words).toContain('cantidad nominal 2,0 kg por paquete');
    expect(words).toMatch(/\d,\d/);
    expect(words.replaceAll(/Fernhill.*|White.*/g, '')).not.toMatch(englishWords);
    expect((await factsOf(paperId))['language']).toBe('es');
  });

  it('is the same bytes when it is fetched again after its customer has another language', async () => {
    await forCustomer('es');
    const { delivery, paperId } = await aClosedDelivery();
    await forCustomer('en');
    // Nothing had drawn it before: what was frozen decides.
    const first = await bytesOf(paperId);
    expect(textOf(first)).toContain('Albarán');
    await forCustomer(null);
    await forSite('en');
    expect((await bytesOf(paperId)).equals(first)).toBe(true);
    await vehicleLeft(house, plant, delivery);
    const form = { correction: 'incorrect-data', reason: 'test: seal misread', seal: 'S2' } as const;
    const next = await house.get(VoidDeliveryNote).execute(asking(plant.actor), delivery, form);
    expect(await wordsOf(next.paperId ?? '')).toContain('Delivery note');
  });

  it('speaks the site’s language for a customer who has none of their own', async () => {
    await forSite('es');
    expect(await wordsOf((await aClosedDelivery()).paperId)).toContain('Albarán');
  });

  it('that was issued before papers had a language is drawn in English, whatever the site and the reader speak', async () => {
    await forSite('es');
    const id = new SystemIds().next();
    const issuedAt = house.clock.now();
    await house.get(UnitOfWork).run((tx) =>
      issuePaper(tx, {
        ...{ id, jobId: new SystemIds().next(), siteId: plant.siteId, kind: 'delivery-note', edition: '1' },
        ...{ number: noteFacts.number, subject: { kind: 'delivery', id }, issuedAt, personId: null },
        facts: JSON.parse(JSON.stringify(noteFacts)) as Canonical,
      }),
    );
    const bytes = await inConversation(() => bytesOf(id), 'es');
    expect(bytes.equals(Buffer.from(await inPaperLanguage(() => deliveryNote(noteFacts, issuedAt, '1'))))).toBe(true);
    expect(textOf(bytes)).toContain('Delivery note');
  });
});

describe('a label', () => {
  it('of a bag speaks the site’s language, its origin and time too, and its symbols stay what they were', async () => {
    await forSite('es');
    const bag = await aBag(house, plant, { netGrams: 996_500, linerLot: 'LN-5521' });
    const { paperId } = await house.get(PrintBagLabel).execute(asking(plant.actor), { bag: bag.number });
    const words = await wordsOf(paperId);
    for (const part of [
      'NETO 996,5 kg',
      'tara predeterminada',
      'corrida del secador DR-2026-',
      'Carga suspendida',
      'jue, 12 mar 2026',
    ]) {
      expect(words).toContain(part);
    }
    expect(words).not.toMatch(/\b(dryer run|gross|tare|scale|liner|look)\b/);
    const symbols = (await symbolsOf(await bytesOf(paperId))).map((symbol) => symbol.prefix + symbol.text).sort();
    expect(symbols).toEqual([`]C100${bag.sscc}`, `]d200${bag.sscc}`]);
    expect((await factsOf(paperId))['language']).toBe('es');
  });

  it('of a pallet goes with the pallet to any customer: it speaks the site’s language and keeps GS1’s English titles', async () => {
    await forCustomer('es');
    const { id } = await aReleasedPallet(house, plant);
    const label = async () => (await house.get(LabelPallet).execute(asking(plant.actor), id)).paperId;
    const first = await label();
    await forSite('es');
    const words = await wordsOf(await label());
    expect(await wordsOf(first)).toContain('BATCH/LOT');
    for (const part of ['LOTE / BATCH', 'CONTENIDO / CONTENT', 'NETO (recuento × nominal)', ',0 kg']) {
      expect(words).toContain(part);
    }
  });

  it.each([
    ['delivery note', () => deliveryNote(noteFacts, '2026-03-12T07:41:00.000Z'), 'SEP 2027', '998,3'],
    ['pallet label', () => palletLabel(palletFacts, '2026-03-12T07:41:00.000Z'), 'PALÉ PARCIAL', '876,3'],
    ['bag label', () => renderBagLabel(bagFacts, '2026-03-12T07:41:00.000Z'), 'COPIA 2', '1,8 kg'],
    ['lot card', () => lotLabel(lotFacts, '2026-03-12T07:41:00.000Z'), 'LOTE', 'Turno de envasado 12 MAR 2026'],
  ])('or note with all that it can say has no English word but the frozen ones: %s', async (_, draw, ...parts) => {
    const words = textOf(await inPaperLanguage(draw, 'es'));
    for (const part of parts) expect(words).toContain(part);
    // What people wrote themselves is printed as they wrote it.
    const ours = words.replace('Ring the bell', '').replace('rest on Friday', '');
    expect(ours).not.toMatch(/\b(and|the|of|before|look|not|with|shift|Runs|short)\b/);
  });
});

describe('the language of papers', () => {
  let clerk: SignedInPerson;
  let manager: SignedInPerson;
  let auditor: SignedInPerson;
  beforeEach(async () => {
    const signIn = async (...roles: Parameters<Plant['actorWith']>) =>
      signedIn(house, await aPerson(house, plant.siteId, { roles }));
    clerk = await signIn('dispatch-clerk');
    manager = await signIn('plant-manager');
    auditor = await signIn('auditor');
  });

  it('is set on the page of the customer, said before the note is printed, and written into the journal', async () => {
    const page = `/customers/${plant.customerId}`;
    expect((await auditor.get(page)).text).not.toContain('name="paperLanguage"');
    expect((await clerk.get(page)).text).toMatch(/name="paperLanguage" value checked/);
    expect((await auditor.send(page, { paperLanguage: 'es' })).status).toBe(403);
    expect((await clerk.send(page, { paperLanguage: 'xx' })).status).toBe(422);
    expect((await clerk.send(page, { paperLanguage: 'es' })).status).toBe(303);
    expect((await clerk.get(page)).text).toMatch(/value="es"[^>]* checked/);
    const pallet = await aReleasedPallet(house, plant);
    const delivery = await aDelivery(house, plant);
    await palletLoaded(house, plant, delivery, pallet.sscc);
    expect((await clerk.get(`/dispatch/${delivery}/close`)).text).toContain('The delivery note will be in: Spanish.');
    expect((await clerk.send(page, { paperLanguage: '' })).status).toBe(303);
    expect((await clerk.get(`/dispatch/${delivery}/close`)).text).toContain('The delivery note will be in: English.');
    const entries = await readerOf(house).sql<{ before: string; after: string }>`
      SELECT "before", "after" FROM "journal_entry" WHERE "action" = 'set-paper-language' ORDER BY "sequence"`;
    expect(entries).toEqual([
      { before: '{"paperLanguage":null}', after: '{"paperLanguage":"es"}' },
      { before: '{"paperLanguage":"es"}', after: '{"paperLanguage":null}' },
    ]);
  });

  it('is set by JSON for a customer and for the site, by those who may, and for customers of the site only', async () => {
    const of = (id: string) => `/api/plant/customers/${id}/paper-language`;
    expect((await clerk.put(of(plant.customerId), { paperLanguage: 'es' })).status).toBe(200);
    expect((await clerk.put(of(new SystemIds().next()), { paperLanguage: 'es' })).status).toBe(404);
    expect((await auditor.put(of(plant.customerId), { paperLanguage: 'es' })).status).toBe(403);
    expect((await clerk.put('/api/plant/paper-language', { paperLanguage: 'es' })).status).toBe(403);
    expect((await manager.put('/api/plant/paper-language', {})).status).toBe(422);
    expect((await manager.put('/api/plant/paper-language', { paperLanguage: 'es' })).status).toBe(200);
    expect((await auditor.get('/api/plant')).body).toMatchObject({
      site: { paperLanguage: 'es' },
      customers: [{ paperLanguage: 'es' }],
    });
    const added = { code: 'K-77', name: 'Juncal (invented)', address: 'x', paperLanguage: 'es' };
    expect((await clerk.post('/api/plant/customers', added)).status).toBe(201);
    const listed = await clerk.get('/api/plant/customers');
    expect(listed.body).toMatchObject({ items: [{ code: 'K-77', paperLanguage: 'es' }, { paperLanguage: 'es' }] });
  });

  it('of the site is set in the set-up, and said on the page of the plant', async () => {
    expect((await manager.get('/set-up/site')).text).toMatch(/value="en"[^>]* checked/);
    expect((await manager.send('/set-up/site/papers', { paperLanguage: '' })).status).toBe(422);
    expect((await manager.send('/set-up/site/papers', { paperLanguage: 'es' })).status).toBe(303);
    expect((await auditor.get('/plant')).text).toContain('on paper are in: Spanish.');
  });
});
