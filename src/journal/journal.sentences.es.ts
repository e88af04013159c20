import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'correction-contradicts-itself':
    'O no ocurrió, o este dato estaba mal: solo puede ser una cosa. Dejarlo vacío, o decir que algún dato estaba mal.',
  'already-corrected': 'Este registro ya se corrigió. Abrirlo de nuevo y mirar la corrección.',
  thing: 'objeto del diario',
  'journal-title': 'Diario',
  'journal-says':
    'Cada cambio aceptado, tal como se registró. Aquí no se puede cambiar nada; cada asiento lleva el hash del anterior. Las personas figuran solo por su identificador.',
  'journal-caption': '{count} {count?asiento|asientos}, del más reciente al más antiguo',
  'journal-sequence': 'N.º',
  'journal-recorded': 'Registrado',
  'journal-what': 'Qué',
  'journal-before-after': 'Contenido',
  'journal-who': 'Quién',
  'journal-happened': 'ocurrió: {at}',
  'journal-reason': 'Motivo: {reason}',
  'journal-before': 'Antes: {content}',
  'journal-house': 'el sistema',
});
