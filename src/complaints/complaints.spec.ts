import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { aBag } from '../../test/support/a-bag.js';
import { aPlant, type Plant } from '../../test/support/a-plant.js';
import { aRun } from '../../test/support/a-run.js';
import { asking, openHouse, type TestHouse } from '../../test/support/house.js';
import { openPointsOf } from '../open-points/open-points.js';
import { READER, type ReadFrom } from '../platform/database/reading.js';
import { BadForm, NotFound } from '../platform/refusal.js';
import { ClassComplaint } from './class-complaint.js';
import { faultOf, statusAfter, type StepTaken } from './complaint-status.js';
import { stepKinds, type StepKind } from './complaint-words.js';
import { complaintPage, complaintsToDecide, contactOf, findComplaint, stepsOf } from './complaints.js';
import { LinkComplaint } from './link-complaint.js';
import { rebuildComplaintStates } from './rebuild-complaint-states.js';
import { RemoveComplaintContact } from './remove-complaint-contact.js';
import { TakeComplaint } from './take-complaint.js';
import { TakeComplaintStep } from './take-complaint-step.js';
import { WithdrawComplaint } from './withdraw-complaint.js';
import { WithdrawComplaintStep } from './withdraw-complaint-step.js';

let house: TestHouse;
let from: ReadFrom;
let plant: Plant;
let siteCount = 0;

beforeAll(async () => {
  house = await openHouse();
  from = house.app.get<ReadFrom>(READER);
});
afterAll(() => house.close());
beforeEach(async () => {
  house.clock.set('2026-03-12T06:00:00.000Z');
  siteCount += 1;
  plant = await aPlant(house, { siteCode: `CO${siteCount}` });
});

const told = { category: 'colour' as const, severity: 'not-as-sold' as const, words: 'Grey, not white' };
const take = (wishes: object = {}) => house.get(TakeComplaint).execute(asking(plant.actor), { ...told, ...wishes });
const step = (id: string, kind: StepKind, wishes: object = {}) =>
  house.get(TakeComplaintStep).execute(asking(plant.actor), id, {
    ...{ kind, words: `${kind} in words` },
    ...(kind === 'answer' ? { way: 'letter' as const } : {}),
    ...wishes,
  });
const withdraw = (stepId: string) =>
  house
    .get(WithdrawComplaintStep)
    .execute(asking(plant.actor), stepId, { why: 'incorrect-data', reason: 'another complaint' });
const statusOf = async (id: string) => (await findComplaint(from, plant.siteId, id)).status;
const openCauses = async () =>
  (await openPointsOf(from, plant.siteId, { state: 'open', limit: 50 })).map(({ cause }) => cause);

describe('a complaint', () => {
  it('is taken in with its own number, what it is about and a point for quality', async () => {
    const bag = await aBag(house, plant);
    const { id, number } = await take({ codeAsRead: 'B1', subjectKind: 'bulk-bag', subjectId: bag.id, packCount: 2 });
    expect(number).toBe('C-2026-000001');
    expect((await take()).number).toBe('C-2026-000002');
    expect(await findComplaint(from, plant.siteId, 'c 2026 1')).toMatchObject({
      ...{ id, status: 'open', category: 'colour', severity: 'not-as-sold', codeAsRead: 'B1', packCount: 2 },
      ...{ subjectKind: 'bulk-bag', subjectId: bag.id, words: 'Grey, not white' },
    });
    expect(await openCauses()).toContain('complaint-came-in');
  });

  it('goes from open over looked into and answered to closed, and clears its point', async () => {
    const { id } = await take({ severity: 'food-safety' });
    expect(await openCauses()).toContain('complaint-food-safety');
    await step(id, 'look-into', { words: null });
    expect(await statusOf(id)).toBe('looking-into');
    expect(await openCauses()).not.toContain('complaint-food-safety');
    await step(id, 'cause');
    await step(id, 'action');
    expect(await statusOf(id)).toBe('looking-into');
    await step(id, 'answer');
    expect(await statusOf(id)).toBe('answered');
    await step(id, 'close');
    expect(await statusOf(id)).toBe('closed');
    expect((await stepsOf(from, id)).map(({ kind }) => kind)).toEqual([
      ...['look-into', 'cause', 'action', 'answer', 'close'],
    ]);
  });

  it('is closed only with a cause and an answer, and reopened only when closed', async () => {
    const { id } = await take();
    await expect(step(id, 'close')).rejects.toMatchObject({ code: 'complaint-without-cause' });
    await step(id, 'cause');
    await expect(step(id, 'close')).rejects.toMatchObject({ code: 'complaint-not-answered' });
    await expect(step(id, 'reopen')).rejects.toMatchObject({ code: 'complaint-not-closed' });
    await step(id, 'answer', { way: 'none', words: 'No name was left' });
    await step(id, 'close');
    await expect(step(id, 'action')).rejects.toMatchObject({ code: 'complaint-closed' });
    await step(id, 'reopen');
    expect(await statusOf(id)).toBe('reopened');
    await expect(step(id, 'close')).rejects.toMatchObject({ code: 'complaint-not-answered' });
  });

  it('asks for words, and for the way of an answer', async () => {
    const { id } = await take();
    await expect(async () => step(id, 'cause', { words: null })).rejects.toThrow(BadForm);
    await expect(async () => step(id, 'answer', { way: null })).rejects.toThrow(BadForm);
    expect(await stepsOf(from, id)).toEqual([]);
  });

  it('has its steps corrected by withdrawal: the status goes back, the record stays', async () => {
    const { id } = await take();
    await step(id, 'cause');
    const answer = await step(id, 'answer');
    const close = await step(id, 'close');
    await expect(withdraw(answer.id)).rejects.toMatchObject({ code: 'complaint-closed' });
    expect(await withdraw(close.id)).toMatchObject({ status: 'answered' });
    expect(await withdraw(answer.id)).toMatchObject({ status: 'looking-into' });
    await expect(withdraw(answer.id)).rejects.toMatchObject({ code: 'already-corrected' });
    const [{ count }] = (await from.sql<{ count: number | string }>`
      SELECT COUNT(*) AS "count" FROM "complaint_step" WHERE "complaint_id" = ${id}`) as [{ count: number | string }];
    expect(Number(count)).toBe(3);
  });

  it('is withdrawn as a whole, stays readable, and takes nothing more', async () => {
    const { id, number } = await take();
    const form = { why: 'did-not-occur' as const, reason: 'entered twice' };
    await house.get(WithdrawComplaint).execute(asking(plant.actor), id, form);
    expect(await statusOf(id)).toBe('withdrawn');
    expect((await complaintPage(from, plant.siteId, { before: null, limit: 10 })).map((row) => row.number)).toEqual([
      number,
    ]);
    await expect(step(id, 'cause')).rejects.toMatchObject({ code: 'complaint-withdrawn' });
    expect(await openCauses()).not.toContain('complaint-came-in');
    expect(await complaintsToDecide(from, plant.siteId)).toEqual([]);
  });

  it('changes category and severity with a reason; the gravest calls quality again', async () => {
    const { id } = await take();
    await step(id, 'look-into');
    const change = (severity: 'food-safety' | 'nuisance') =>
      house.get(ClassComplaint).execute(asking(plant.actor), id, {
        ...{ category: 'foreign-body', severity, reason: 'it is glass' },
      });
    await change('food-safety');
    expect(await findComplaint(from, plant.siteId, id)).toMatchObject({
      severity: 'food-safety',
      status: 'looking-into',
    });
    expect(await openCauses()).toContain('complaint-food-safety');
    await expect(change('food-safety')).rejects.toMatchObject({ code: 'complaint-class-unchanged' });
  });

  it('is linked later, and anew where it was another thing', async () => {
    const { id } = await take();
    const one = await aRun(house, plant);
    const other = await aRun(house, plant, { lineId: plant.lineIds[1] });
    const link = (subjectId: string) =>
      house.get(LinkComplaint).execute(asking(plant.actor), id, { subjectKind: 'packing-run', subjectId });
    await link(one.runId);
    await link(other.runId);
    expect(await findComplaint(from, plant.siteId, id)).toMatchObject({ subjectId: other.runId });
    await expect(link('0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10')).rejects.toThrow(NotFound);
    // Another site's run is none of ours, whoever knows its id; nor can a complaint be taken about it.
    const elsewhere = await aPlant(house, { siteCode: 'CX' });
    const foreign = await aRun(house, elsewhere);
    await expect(link(foreign.runId)).rejects.toThrow(NotFound);
    await expect(take({ subjectKind: 'packing-run', subjectId: foreign.runId })).rejects.toThrow(NotFound);
    expect(await findComplaint(from, plant.siteId, id)).toMatchObject({ subjectId: other.runId });
  });

  it('keeps who complained apart; that goes by command, and the journal never held it', async () => {
    await expect(take({ contactReach: '555 0100' })).rejects.toMatchObject({ code: 'contact-without-name' });
    const { id } = await take({ contactName: 'Una Fennimore', contactReach: '555 0100' });
    expect(await contactOf(from, id)).toEqual({ name: 'Una Fennimore', reach: '555 0100' });
    const remove = () => house.get(RemoveComplaintContact).execute(asking(plant.actor), id);
    await remove();
    expect(await contactOf(from, id)).toBeNull();
    await expect(remove()).rejects.toMatchObject({ code: 'complaint-contact-gone' });
    const bodies = await from.sql<{ after: string | null }>`SELECT "after" FROM "journal_entry"`;
    const keys = await from.sql<{ answer: string }>`SELECT "answer" FROM "idempotency_key"`;
    const kept = [...bodies.map(({ after }) => after ?? ''), ...keys.map(({ answer }) => answer)].join('\n');
    expect(kept).not.toMatch(/Fennimore|555 0100|Grey, not white/);
  });

  it('is not known on another site, nor by a half number', async () => {
    const { id } = await take();
    const other = await aPlant(house, { siteCode: `CX${siteCount}` });
    await expect(findComplaint(from, other.siteId, id)).rejects.toThrow(NotFound);
    await expect(findComplaint(from, plant.siteId, 'C-2026')).rejects.toThrow(NotFound);
    await expect(house.get(TakeComplaintStep).execute(asking(other.actor), id, { kind: 'look-into' })).rejects.toThrow(
      NotFound,
    );
  });

  it('counts once when it is sent twice', async () => {
    const asked = asking(plant.actor, 'once');
    const send = () => house.get(TakeComplaint).execute(asked, told);
    expect(await send()).toEqual(await send());
    expect(await complaintPage(from, plant.siteId, { before: null, limit: 10 })).toHaveLength(1);
  });

  it('is closed by one of two who press at once', async () => {
    const { id } = await take();
    await step(id, 'cause');
    await step(id, 'answer');
    const outcomes = await Promise.allSettled([step(id, 'close'), step(id, 'close')]);
    const refused = outcomes.filter((outcome) => outcome.status === 'rejected');
    expect(refused).toHaveLength(1);
    expect(['complaint-closed', 'complaint-moved-on']).toContain((refused[0]?.reason as { code: string }).code);
    expect((await stepsOf(from, id)).filter(({ kind }) => kind === 'close')).toHaveLength(1);
  });

  it('stands as its facts say, whatever was tried on it', async () => {
    const kinds = fc.sample(fc.array(fc.constantFrom(...stepKinds), { minLength: 6, maxLength: 10 }), {
      ...{ numRuns: 6, seed: 952 },
    });
    for (const tried of kinds) {
      const { id } = await take();
      const taken: StepTaken[] = [];
      for (const kind of tried) {
        const fault = faultOf(taken, kind);
        if (fault === null) {
          await step(id, kind);
          taken.push({ kind });
        } else {
          await expect(step(id, kind)).rejects.toMatchObject({ code: fault });
        }
      }
      expect(await statusOf(id)).toBe(statusAfter(taken));
    }
    const rebuilt = await rebuildComplaintStates(from, plant.siteId);
    const rows = await complaintPage(from, plant.siteId, { before: null, limit: 50 });
    expect(rows).toHaveLength(6);
    for (const { id, status } of rows) expect(rebuilt.get(id)).toBe(status);
  });

  it('stands on the list the gravest first, then what nobody has begun', async () => {
    const minor = await take({ severity: 'nuisance' });
    const looked = await take();
    await step(looked.id, 'look-into');
    const begun = await take();
    const grave = await take({ severity: 'food-safety' });
    const rows = await complaintsToDecide(from, plant.siteId);
    expect(rows.map(({ id }) => id)).toEqual([grave.id, begun.id, looked.id, minor.id]);
  });
});
