import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'happened-scale-has-failed':
    'Azúcar retirado se pesó en la báscula {scale}, que no había pasado su última comprobación. Se anotó porque ya ocurrió. Pesarlo otra vez en una báscula que la haya pasado, o juzgar cuánto puede desviarse el peso.',
});
