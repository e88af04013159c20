import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'home-desks': 'Puestos',
});
