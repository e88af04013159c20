import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { aPerson, signedIn, type SignedInPerson } from '../../test/support/a-person.js';
import { aShiftOfTwoLines, earlyShift, onThatDay, type ShiftOfTwoLines } from '../../test/support/an-account.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { SetPaperLanguage } from '../plant/set-paper-language.js';

let house: TestHouse;
let made: ShiftOfTwoLines;
let lead: SignedInPerson;

beforeAll(async () => {
  house = await openHouse();
  made = await aShiftOfTwoLines(house, { skippedTip: true });
  lead = await signedIn(house, await aPerson(house, made.plant.siteId, { roles: ['line-lead'] }));
});
afterAll(() => house.close());

const text = (html: string): string => html.replaceAll(/<[^>]+>/g, ' ').replaceAll(/[\s\u202f]+/g, ' ');

describe('accounts over the wire', () => {
  let id = '';

  it('are drafted for the last shift that ended, with the hash that is signed', async () => {
    const answer = await lead.get(`/api/accounts/draft?hopper=${made.plant.hopperId}`);
    expect(answer.status).toBe(200);
    expect(answer.body).toMatchObject({
      contentHash: expect.stringMatching(/^[0-9a-f]{64}$/) as unknown,
      account: { ...earlyShift, verdict: 'does-not-close', hopperCode: 'H1' },
    });
  });

  it('are signed by a line lead as they were seen, and listed', async () => {
    const { hopperId } = made.plant;
    const draft = await lead.get(`/api/accounts/draft?hopper=${hopperId}&shiftAt=${onThatDay('06:00')}`);
    const { contentHash: seenHash } = draft.body as { contentHash: string };
    const refused = await lead.post('/api/accounts', { hopper: hopperId, seenHash });
    expect([refused.status, (refused.body as { type: string }).type]).toEqual([
      409,
      'problem:account-needs-explanation',
    ]);
    const form = { hopper: hopperId, seenHash, statedLoss: 'A bag <1 t> may be missing' };
    const answer = await lead.post('/api/accounts', form);
    expect(answer.status).toBe(201);
    id = (answer.body as { id: string }).id;
    const list = await lead.get('/api/accounts');
    expect(list.body).toMatchObject({ items: [{ id, number: 'AC-2026-000001', isVoid: false }], next: null });
  });

  it('are shown with the sentence that must balance, the suspect and what changed since', async () => {
    await made.records.tip({ openedAt: onThatDay('07:10'), netGrams: 1_002_000 });
    const page = await lead.get(`/accounts/${id}`);
    expect(page.status).toBe(200);
    const shown = text(page.text);
    expect(shown).toContain('In the hopper at the start: 200.000 kg; poured in: 3 998.000 kg.');
    expect(shown).toContain(
      'Of that came 4 601.500 kg in packs + 30.200 kg rejected + 8.004 kg as samples + 12.000 kg swept up + 150.000 kg weighed back in bags, and in the hopper at the end: 397.000 kg.',
    );
    expect(shown).toContain('That is 1 000.704 kg more than came in.');
    expect(shown).toContain('A bag of about 999.500 kg was tipped and not recorded; \u22121.204 kg would be left.');
    expect(page.text).toContain('A bag &lt;1 t');
    expect(shown).toContain('The difference has moved by +1 002.000 kg.');
    expect(page.text).toContain(`/thread?code=${made.tips[0]?.number}`);
    // A code without its sentence would stand there as the code itself.
    expect(shown).not.toMatch(/\baccount-[a-z]/);
    const list = await lead.get('/accounts');
    expect(text(list.text)).toContain('AC-2026-000001');
    const json = await lead.get(`/api/accounts/${id}`);
    expect(json.body).toMatchObject({ number: 'AC-2026-000001', since: { hasChanged: true, movedByGrams: 1_002_000 } });
  });

  it('are led to on paper in the language of the site, with its decimals, where the reader has another one', async () => {
    const page = `/accounts/${id}`;
    expect((await lead.get(page)).text).not.toContain('for=paper');
    await house.get(SetPaperLanguage).forSite(asking(made.plant.actor), { paperLanguage: 'es' });
    expect((await lead.get(page)).text).toContain(`href="${page}?for=paper"`);
    const paper = await lead.get(`${page}?for=paper`);
    expect(paper.text).toContain('<html lang="es">');
    expect(text(paper.text)).toContain('1 000,704 kg');
    expect(paper.text).toContain('Back to the page in English');
    expect((await lead.get(`${page}?for=wall`)).status).toBe(422);
    await house.get(SetPaperLanguage).forSite(asking(made.plant.actor), { paperLanguage: 'en' });
  });

  it('are read by an auditor, who signs none, and declared void by who may sign', async () => {
    const auditor = await signedIn(house, await aPerson(house, made.plant.siteId, { roles: ['auditor'] }));
    expect((await auditor.get(`/api/accounts/${id}`)).status).toBe(200);
    expect((await auditor.post('/api/accounts', { hopper: made.plant.hopperId })).status).toBe(403);
    const correction = { why: 'incorrect-data', reason: 'A tip was recorded late' };
    expect((await auditor.post(`/api/accounts/${id}/correction`, correction)).status).toBe(403);
    expect((await lead.post(`/api/accounts/${id}/correction`, correction)).status).toBe(201);
    expect(text((await lead.get(`/accounts/${id}`)).text)).toContain('Account AC-2026-000001 was declared void.');
  });

  it('are refused by halves, and not found where there is none', async () => {
    const { hopperId } = made.plant;
    const half = await lead.get(`/api/accounts/draft?hopper=${hopperId}&fromAt=${earlyShift.fromAt}`);
    expect(half.status).toBe(422);
    expect((await lead.get('/api/accounts/draft?hopper=none')).status).toBe(422);
    expect((await lead.get(`/api/accounts/draft?hopper=${made.plant.siteId}`)).status).toBe(404);
    expect((await lead.get(`/api/accounts/${made.plant.siteId}`)).status).toBe(404);
    expect((await lead.get('/accounts/none')).status).toBeLessThan(500);
  });
});
