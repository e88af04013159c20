import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'paper-row-keyed':
    'La fila {row} de la hoja {sheet} ya está pasada: {what:action}, {at}. Una fila da un solo registro. Mirar si es correcto; si no lo es, corregir ese registro.',
});
