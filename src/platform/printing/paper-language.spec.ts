import { describe, expect, it } from '@jest/globals';
import { inConversation } from '../sentences/language.js';
import { say } from '../sentences/sentences.js';
import '../sentences/pages.sentences.js';
import '../sentences/pages.sentences.es.js';
import { localText } from '../web/local-text.js';
import { inPaperLanguage } from './paper-language.js';
import { printedTime } from './printed-figures.js';

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
});
