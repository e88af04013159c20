import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  'search-title': 'Where did it come from, and where did it go?',
  'search-label': 'Scan or type any code',
  'search-button': 'Follow it',
  'search-hint':
    'A code off a pack, with or without its time · a bag’s number · an SSCC · a delivery note · a film roll · a run. Spaces do not matter.',
  'home-desks': 'Desks',
  'search-which': '“{code}” fits several things. Which one do you have in your hand?',
  code: 'thing with the code',
  'thread-kind': 'kind of thread',
});
