import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'lost-form-signed-out':
    'Entretanto se cerró la sesión. Entrar otra vez; lo anotado se conserva y se puede enviar entonces.',
  'lost-form-title': 'Aún sin enviar',
  'lost-form-says':
    'Esto se anotó antes de que acabara la sesión, y nada de ello quedó registrado. Mirarlo y enviarlo como registro propio, o dejarlo.',
  'lost-form-send': 'Enviarlo ahora',
  'lost-form-leave': 'Dejarlo y seguir',
});
