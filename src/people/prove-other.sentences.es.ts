import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'other-proof-needed':
    'La segunda persona demuestra quién es: en una tableta o lector compartido con tarjeta, o con nombre y PIN; en otro sitio con código y contraseña.',
  'other-proof-failed':
    'Eso no demuestra quién es, así que nada se firmó. La segunda persona lo intenta otra vez, o se firma a solas.',
  'other-is-same': 'La segunda persona debe ser otra. Pedir a un compañero que muestre su propia tarjeta o PIN.',
});
