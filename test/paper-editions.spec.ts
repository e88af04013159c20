import { describe, expect, it } from '@jest/globals';
import { deliveryNote } from '../src/dispatch/delivery-note.paper.js';
import '../src/dispatch/dispatch.sentences.js';
import '../src/dispatch/going-and-coming.sentences.js';
import '../src/drying/bag-label.sentences.js';
import { renderBagLabel } from '../src/drying/bulk-bag.label.js';
import '../src/packing/lot-label.sentences.js';
import '../src/pallets/pallets.sentences.js';
import { lotLabel } from '../src/packing/lot.label.js';
import { palletLabel } from '../src/pallets/pallet.label.js';
import { inPaperLanguage } from '../src/platform/printing/paper-language.js';
import { sha256 } from '../src/platform/canonical-text.js';
import '../src/fill-weight/fill-weight.sentences.js';
import '../src/fill-weight/report/weight-report.sentences.js';
import { weightReport } from '../src/fill-weight/report/weight-report.paper.js';
import '../src/fill-weight/run-weights/run-weights.sentences.js';
import '../src/fill-weight/verdict.sentences.js';
import '../src/fill-weight/weight-pictures.sentences.js';
import { textOf } from './support/read-pdf.js';
import { bagFacts, lotFacts, noteFacts, palletFacts, weightReportFacts } from './support/paper-facts.js';

const issuedAt = '2026-03-12T07:41:00.000Z';

/** The hashes were written down with the renderers of the release before papers had a language. */
describe('a paper whose facts are from before papers had a language', () => {
  it.each([
    [
      'delivery note',
      () => deliveryNote(noteFacts, issuedAt, '1'),
      'fbf2822d573ca86a31c286c8a9b5b2ec54af5312904fd52f343db64edb4e721f',
    ],
    [
      'pallet label',
      () => palletLabel(palletFacts, issuedAt),
      '95342ee358aee10acfafb6573d4d2415064462fe0e363ed7094935035eb867e6',
    ],
    [
      'bag label',
      () => renderBagLabel(bagFacts, issuedAt),
      '0f373fd4480710a3053176c333ed21611f1a9e1d1e4ed376d356fb91ff48cfe0',
    ],
    [
      'lot card',
      () => lotLabel(lotFacts, issuedAt),
      '5dcea1d5792ae02a7de7734f411b69917d6be5eeea13f5cd364fd7d04b9a4c14',
    ],
  ])('is drawn to the byte as it was: %s', async (_, draw, hash) => {
    expect(sha256(Buffer.from(await inPaperLanguage(draw)))).toBe(hash);
  });
});

/** The hashes were written down with the renderers of editions 1 and 2. */
describe('a weight report whose facts are of an earlier edition', () => {
  it('is drawn to the byte as it was where they say nothing of settings', async () => {
    const bytes = await inPaperLanguage(() => weightReport(weightReportFacts, issuedAt));
    expect(sha256(Buffer.from(bytes))).toBe('8cb268ca28964db65946a97464abf34b2792d30e7c9f287ce17c79a5a8004eae');
  });

  it('has settings where its facts do, and with no chart of hours is drawn to the byte as edition 2 was', async () => {
    const settings = ['At the start: setpoint 2 004.00 g, as last recorded.'];
    const bytes = await inPaperLanguage(() => weightReport({ ...weightReportFacts, settings }, issuedAt));
    expect(textOf(Buffer.from(bytes)).replaceAll(/\s+/g, ' ')).toMatch(/as recorded by hand At the start: setpoint/);
    expect(sha256(Buffer.from(bytes))).toBe('446aacf5b95199916aec0a01f0dcfc8e93b7d9bb853cb49d4673ead237e81850');
  });
});
