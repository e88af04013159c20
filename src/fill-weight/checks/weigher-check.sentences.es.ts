import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'weigher-check-not-planned':
    'La línea {line} no tiene entonces un plan de controles de una pesadora {station}. Prepararlo en Configurar la planta, Controles de línea, con los paquetes de prueba, o indicar su puesto; después enviar otra vez.',
  'weigher-check-which-plan':
    'La pesadora {weigher} no dice cuál de los puestos de la línea {line} controló: {stations}. Enviar el puesto o llamarlo {weigher} en su plan.',
  'weigher-check-of-other':
    'El control {sequence} ya llegó, con otras lecturas. Si el contador empezó de nuevo, enviar con otra serie; un control recibido no se cambia.',
  'field-not-grams': 'Admite un número simple de gramos con punto, como 2000.4: ni texto ni coma.',
  'reading-expected-otherwise':
    '{piece}: la pesadora esperaba {expectedGrams} g, el plan conoce {knownGrams} g. Corregir lo que esté mal, pesar otra vez el paquete de prueba y enviar.',
});
