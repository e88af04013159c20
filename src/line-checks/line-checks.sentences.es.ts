import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'check-plan': 'plan de control',
  'line-check': 'control de línea',
  'check-plan-there-already': '{station} ya tiene un plan de este tipo en esta línea. Cambiar ese plan.',
  'check-plan-never-due': 'Nada hace que este control toque. Indicar un intervalo o al menos un suceso.',
  'check-plan-ended': 'El plan de {station} no está en vigor desde {endedAt}. Volver a mirar la lista de controles.',
  'test-pieces-needed':
    'Este tipo de control se hace con piezas patrón o paquetes de prueba. Introducir los que usa la planta.',
  'test-piece-twice': 'Hay dos piezas patrón {piece}. Dar a cada una su propio código.',
  'test-piece-incomplete':
    'La pieza patrón {piece} no está completa: una pieza de metal necesita material y esfera; un paquete de prueba, su peso conocido y lo que puede desviarse.',
  'result-of-no-piece': 'El plan no tiene ninguna pieza {piece}. Cargar la página de nuevo: el plan ha cambiado.',
  'result-missing': 'Indicar si {piece} ha pasado.',
  'reading-missing':
    'No llegó ninguna lectura de {piece}. Pesar el paquete de prueba y enviar lo que marca la pesadora.',
  'reading-is-thousandth':
    '{piece}: {grams} g es la milésima parte de sus {knownGrams} g. Parecen kilogramos donde se esperan gramos, o una coma entre millares. Introducir en gramos lo que marcó la pesadora.',
  'reading-is-thousandfold':
    '{piece}: {grams} g es mil veces sus {knownGrams} g. Parecen miligramos donde se esperan gramos. Introducir en gramos lo que marcó la pesadora.',
  'reading-is-below-zero':
    '{piece}: {grams} g es menos que nada. Mirar el cero y la tara de la pesadora y pesar otra vez el paquete de prueba. Si sigue igual, el control no ha pasado: anotarlo como no conforme, sin lectura.',
  'reading-is-absurd':
    '{piece}: {grams} g es más de {times} veces sus {knownGrams} g. Mirar si era este paquete y pesarlo otra vez. Si sigue igual, el control no ha pasado: anotarlo como no conforme, sin lectura.',
  'no-run-to-read-code-of':
    'La línea {line} no tenía corrida entonces y no hay código con que comparar. Iniciar primero la corrida.',
  'check-there-already':
    'El mismo control ya se anotó el {at} como conforme. No hay nada que hacer; uno no conforme sí se anotaría.',
  'check-needs-action': 'El control de {station} no ha pasado. Indicar qué se hizo en el acto.',
  'check-needs-second-person': 'El plan de {station} pide una segunda persona. Indicar quién más lo vio.',
  'failed-check-is-for-quality': 'Un control no conforme solo lo corrige calidad. Avisar a calidad.',
  'line-check-overdue': 'Línea {line}: el control de {check} tocaba el {at}. Hacerlo ahora.',
  'line-check-failed':
    'Línea {line}: el control de {check} no pasó el {at}. Decidir sobre lo envasado desde el último control conforme.',
  'torn-bag-found': 'Línea {line}: un paquete o su sellado estaba roto ({check}). Mirar el paquete y decidir.',
  'check-happened-against-rule':
    'Línea {line}: un control de {check} llegó de un dispositivo o de una hoja y no cumple una regla de la planta ({rule}). Mirarlo.',
});
