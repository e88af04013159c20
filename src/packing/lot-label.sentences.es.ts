import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'lot-label-lot': 'LOTE',
  'lot-label-copy': 'COPIA {number}',
  'lot-label-best-before': 'CONSUMO PREFERENTE {day}',
  'lot-label-shift': 'Turno de envasado {day} {shift}',
  'lot-label-first': 'Primeros paquetes {at}',
  'lot-label-runs': 'Corridas {runs}',
  'lot-label-state': 'Esta tarjeta no promete ningún estado: consultar el lote antes de usarlo.',
});
