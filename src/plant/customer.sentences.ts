import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'customer-title': 'Customer {code}',
  'customer-code': 'Code',
  'customer-address': 'Address',
  'customer-telephone': 'Telephone',
  'customer-papers': 'Papers for this customer',
  'customer-papers-says':
    'Delivery notes that are issued from now on are in this language. Papers that were issued stay as they are, copies too.',
  'customer-papers-choice': 'Language of papers',
  'customer-papers-as-site': 'as the plant’s papers',
  'customer-papers-set': 'Set the language',
  'customer-papers-said': 'The language of papers is set.',
  'customer-deliveries': 'To the deliveries',
  'plant-papers': 'Papers',
  'papers-language-en': 'English',
  'papers-language-es': 'Spanish',
  'papers-language-of-site': 'Labels, handovers and accounts on paper are in: {language:papers-language}.',
  'papers-as-site': '{language:papers-language}, as the plant’s papers',
  'note-will-be-in': 'The delivery note will be in: {language:papers-language}.',
  'note-language-change': 'Another language for this customer',
  'label-will-be-in': 'The label will be in: {language:papers-language}.',
  'paper-page-to': 'For the printer, in: {language:papers-language}',
  'paper-page-back': 'Back to the page in English',
});
