import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'demo-entrance-title': 'Alder Quay: la demostración',
  'demo-entrance-says':
    'Todo es inventado. Por eso sus contraseñas, PIN y tarjetas están aquí a la vista; una planta real no tiene esta página.',
  'demo-devices': 'Qué es este navegador',
  'demo-is-no-device': 'Es un ordenador que la planta no conoce: las personas entran con código y contraseña.',
  'demo-is-device': 'Es {device}: allí las personas entran con la tarjeta, o con nombre y PIN.',
  'demo-devices-say': 'Pulsar para convertirlo en otro. Después, entrar.',
  'demo-no-devices': 'Esta demostración se hizo antes de que tuviera tabletas. Iniciarla con --fresh la hace de nuevo.',
  'demo-become': '{device} ({kind})',
  'demo-become-none': 'Ningún dispositivo de la planta',
  'demo-people': 'Quién trabaja aquí',
  'demo-people-say':
    'Sin lector, copiar una tarjeta y pegarla en el campo de la tarjeta. Las decisiones que se piden dos veces en una tableta, como levantar una retención, piden tarjeta y PIN.',
});
