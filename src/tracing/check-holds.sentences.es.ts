import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'check-not-failed':
    'El control de {station} no falló o se anuló: no hay nada que retener. Volver a mirar el control.',
  'nothing-packed-since':
    'No se ha envasado nada desde el último control conforme de {station}. No hay nada que retener.',
  'suspects-held-already': 'Todo está ya retenido ({hold}). No hay nada que hacer.',
  'held-since-last-good': 'Línea {line}: el control de {station} no pasó el {at}; último conforme el {lastGoodAt}',
  'held-since-first': 'Línea {line}: el control de {station} no pasó el {at}; sin control conforme anterior',
  'held-torn-bag': 'Línea {line}: paquete roto, o su sellado ({station}), visto el {at}',
});
