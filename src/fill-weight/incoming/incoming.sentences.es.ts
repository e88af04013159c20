import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'machine-weighs-nothing':
    'Esta máquina no es una pesadora de paquetes. Hacerla instalar primero en su línea y enviar otra vez.',
  'weights-in-error':
    '{wrong} de {lines} líneas no se pueden admitir, así que no se admitió nada del lote de datos. Corregirlas, o enviar con lines=skip para que se admita el resto.',
  'weights-in-hand':
    'Ya se están escribiendo {most} envíos de pesos. Esperar lo que dice Retry-After y enviar otra vez; de este no se admitió nada.',
  'weights-not-as-announced':
    'Se anunciaron {announced} líneas y llegaron {found}: el envío se cortó. No se admitió nada; enviarlo otra vez.',
  'too-many-weights': 'Un envío admite {most} pesos como máximo. Enviarlo en partes; de este no se admitió nada.',
  'too-many-gaps':
    'Las secuencias de este envío tienen {gaps} huecos; se admiten {most} de una vez. Mirar si la secuencia cuenta paquetes, o enviar menos de una vez.',
  'weight-line-not-json': 'Esta línea no es un objeto JSON. Enviar un objeto por línea, como {example}.',
  'weight-line-too-long': 'Esta línea tiene más de {most} bytes. Enviar un peso por línea.',
  'weight-given-twice': 'El peso, o la columna, se da dos veces. Enviarlo una vez, como netGrams o netMilligrams.',
  'weight-not-number': 'Admite un número simple: gramos con punto como 1003.2, o miligramos enteros.',
  'weight-text-not-taken': 'Admite un texto de 60 caracteres como máximo, y un envío nombra 200 distintos como máximo.',
  'weight-fields-not-counted':
    'Esta línea tiene {found} campos y la primera tiene {expected}. Donde las comas separan campos, los decimales llevan punto.',
  'weight-quotes-not-closed':
    'Un campo entre comillas de esta línea no termina. Cerrar las comillas; ningún campo sigue en la línea siguiente.',
  'weight-header-not-read': 'La primera línea tiene que nombrar las columnas: {fields}.',
  'weight-column-unknown':
    'La columna {column} se llama «{named}», que no es ninguna de las nuestras. La primera línea nombra las columnas: {fields}.',
  'weight-run-unknown':
    'Aquí no hay ninguna corrida {run}. Enviar el número como está en los registros, o dejarlo fuera: entonces la hora dice cuál es.',
  'weight-run-of-other-line':
    'La corrida {run} es de la línea {itsLine}; esta pesadora está en la línea {line}. Enviar con la corrida correcta, o instalar la pesadora en esa línea.',
  'weight-of-other-line':
    'Aquí se nombra la línea {named}; la pesadora está en la línea {line}. Enviar con su propia línea, o instalarla allí.',
  'weight-without-run':
    'La línea no tenía nada en marcha a las {at}. Empezar la corrida, o corregir el reloj de la pesadora, y enviar otra vez.',
  'weight-time-not-read':
    'Esto no es una hora como se describieron las columnas del archivo. Mirar el orden de la fecha, y si la hora está en una columna propia.',
  'weight-ahead-of-clock':
    '{at} va por delante del reloj de la planta ({now}). Corregir el reloj de la pesadora, o enviar su hora como Device-Time.',
  'weight-before-run':
    '{at} es antes de que empezara la corrida {run} a las {startedAt}. Enviar con la corrida de esa hora, o corregir el reloj de la pesadora.',
  'weight-after-run':
    '{at} es después de que se cerrara la corrida {run} a las {closedAt}. Enviar con la corrida de esa hora, o corregir el reloj de la pesadora.',
  'weight-in-kilograms':
    '{grams} g para paquetes de {nominalGrams} g: parecen kilogramos donde se esperan gramos. Enviar gramos, o miligramos como netMilligrams.',
  'weight-in-milligrams':
    '{grams} g para paquetes de {nominalGrams} g: parecen miligramos donde se esperan gramos. Enviar gramos, o miligramos como netMilligrams.',
  'weight-below-zero': '{grams} g es menos que nada. Mirar el cero y la tara de la pesadora; dejar fuera la línea.',
  'weight-absurd':
    '{grams} g es más de {times} veces los {nominalGrams} g nominales de la corrida {run}. Mirar la unidad y la corrida; dejar fuera la línea si no era un paquete.',
  'weight-sequence-twice':
    'La secuencia {sequence} ya está en la línea {line}, con otro peso. Dejar fuera la equivocada.',
  'weight-sequence-of-other':
    'La secuencia {sequence} ya se recibió, con {keptGrams} g o de otra manera. Si el contador empezó de nuevo, enviar con otra serie; un peso recibido no se cambia.',
});
