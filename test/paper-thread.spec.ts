import { afterAll, describe, expect, it } from '@jest/globals';
import '../src/fill-weight/fill-weight.sentences.js';
import '../src/fill-weight/report/weight-report.sentences.es.js';
import '../src/fill-weight/report/weight-report.sentences.js';
import { url, weightReport, weightReportEdition } from '../src/fill-weight/report/weight-report.paper.js';
import { inPaperLanguage } from '../src/platform/printing/paper-language.js';
import { PaperThread } from '../src/platform/printing/paper-thread.js';
import { weightReportFacts } from './support/paper-facts.js';

const issuedAt = '2026-03-12T07:41:00.000Z';

describe('a thread that draws papers', () => {
  const thread = new PaperThread();
  afterAll(() => thread.stop());

  const asked = { url, facts: weightReportFacts, issuedAt, edition: weightReportEdition };

  it('draws to the byte what the server draws, in the language of the paper', async () => {
    const own = async (language: 'en' | 'es') =>
      Buffer.from(await inPaperLanguage(() => weightReport(weightReportFacts, issuedAt), language));
    const drawn = await Promise.all((['en', 'es'] as const).map((language) => thread.draw({ ...asked, language })));
    const [english, spanish] = [await own('en'), await own('es')];
    expect(drawn.map((bytes) => Buffer.from(bytes).equals(english))).toEqual([true, false]);
    expect(drawn.map((bytes) => Buffer.from(bytes).equals(spanish))).toEqual([false, true]);
  });

  it('says why a paper cannot be drawn, and draws the next', async () => {
    const [broken, good] = await Promise.allSettled([
      thread.draw({ ...asked, facts: null, language: 'en' }),
      thread.draw({ ...asked, language: 'en' }),
    ]);
    expect(broken).toMatchObject({ status: 'rejected', reason: { message: expect.stringContaining('TypeError') } });
    expect(good.status).toBe('fulfilled');
  });
});
