import { describe, expect, it } from '@jest/globals';
import { inConversation } from '../platform/sentences/language.js';
import './actions.sentences.es.js';
import './actions.sentences.js';
import './content-names.sentences.es.js';
import './content-names.sentences.js';
import { actionText, contentText, subjectText } from './entry-text.js';

describe('an entry of the journal in words', () => {
  it('says what was done in the language of the reader', () => {
    expect(inConversation(() => actionText('tip-bag'), 'en')).toBe('bag tipped');
    expect(inConversation(() => actionText('tip-bag'), 'es')).toBe('big bag volcado');
  });

  it('names what it is about by the tail of its id', () => {
    expect(subjectText('some-kind', '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10')).toBe('some-kind …1b7a10');
  });

  it('shows what is known of the content, and leaves out what is not', () => {
    const content =
      '{"action":null,"at":"2026-03-12T07:41:00.000Z","bagId":"0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10","grams":1000,"seen":null}';
    expect(contentText(content)).toBe('at: 2026-03-12T07:41:00.000Z, bag: …1b7a10, grams: 1000');
    expect(inConversation(() => contentText(content), 'es')).toContain('big bag: …1b7a10, gramos: 1000');
  });

  it('calls what the catalogue has no words for as it is stored, word by word', () => {
    expect(contentText('{"netGrams":5,"someNewThing":"x"}')).toBe('net, g: 5, some new thing: x');
  });
});
