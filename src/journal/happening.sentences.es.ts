import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'paper-row-keyed':
    'La fila {row} de la hoja {sheet} ya está pasada, y una fila da un registro de cada clase. Mirar si es correcto; si no lo es, corregir ese registro.',
});
