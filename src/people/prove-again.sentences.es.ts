import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'proof-needed':
    'Antes de decidirlo, demostrar otra vez la identidad: en una tableta o un terminal de mano compartidos, escanear la tarjeta propia y escribir el PIN; en otro sitio, escribir la contraseña.',
  'proof-failed':
    'Eso no demuestra la identidad, así que no se ha decidido nada. Intentarlo otra vez: en una tableta o un terminal de mano compartidos con la tarjeta propia y el PIN, en otro sitio con la contraseña.',
});
