import { addSentences } from './sentences.js';

addSentences('es', {
  'state-waiting': 'En espera',
  'state-released': 'Liberado',
  'state-on-hold': 'Retenido',
  'state-rejected': 'Rechazado',
  'state-concession': 'Concesión',
  'state-doubtful': 'Comprobar',
});
