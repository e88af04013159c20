import { describe, expect, it } from '@jest/globals';
import { inConversation } from '../sentences/language.js';
import { say } from '../sentences/sentences.js';
import '../sentences/pages.sentences.js';
import '../sentences/pages.sentences.es.js';
import { decimalText } from '../sentences/decimal-text.js';
import { localText } from '../web/local-text.js';
import { inPaperLanguage, paperLanguageOf } from './paper-language.js';
import { kilograms, printedDay, printedTime } from './printed-figures.js';

const at = '2026-03-12T07:41:00.000Z';
const zone = 'Europe/Berlin';

describe('a paper', () => {
  it('freezes the same time, whatever language the person speaks who has it printed', () => {
    const english = printedTime(at, zone);
    expect(inConversation(() => printedTime(at, zone), 'es')).toBe(english);
    expect(inConversation(() => localText(at, zone), 'es')).not.toBe(english);
  });

  it('says the same while it is written, also after waiting, and the person goes on in their own language', async () => {
    await inConversation(async () => {
      const said = await inPaperLanguage(async () => {
        await Promise.resolve();
        return say('sign-out');
      });
      expect([said, say('sign-out')]).toEqual(['Sign out', 'Salir']);
    }, 'es');
  });

  it('speaks the language that its facts name, and English where they name none that is known', () => {
    expect([{ language: 'es' }, { language: 'en' }, {}, { language: 'xx' }, null].map(paperLanguageOf)).toEqual([
      ...['es', 'en', 'en', 'en', 'en'],
    ]);
  });

  it('writes days and decimals as its language does', () => {
    const written = () => [printedDay('2027-01-09'), kilograms(12_480_250), decimalText('998.3 kg')];
    expect(inPaperLanguage(written, 'es')).toEqual(['9 ENE 2027', '12\u2009480,25', '998,3 kg']);
    expect(inPaperLanguage(written, 'en')).toEqual(['9 JAN 2027', '12\u2009480.25', '998.3 kg']);
    expect(inConversation(written, 'es').slice(1)).toEqual(['12\u202f480.25', '998.3 kg']);
    expect(printedTime(at, zone, 'es')).toBe('jue, 12 mar 2026, 08:41');
  });
});
