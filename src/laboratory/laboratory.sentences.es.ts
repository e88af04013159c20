import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  sample: 'muestra',
  result: 'resultado',
  'not-of-this-sample':
    'Una muestra representa un big bag o un tiempo de un secador, no las dos cosas. Quitar este dato, o cambiar lo que representa.',
  'sample-before-its-time':
    'Lo que representa esta muestra empieza el {fromAt}, después de su toma ({takenAt}). Corregir uno de los dos.',
  'result-already-there':
    'La muestra {sample} ya tiene un resultado de {property:measured} por {method}. Enviarlo como repetición, o corregir el que hay.',
  'no-result-to-retest':
    'La muestra {sample} no tiene todavía resultado de {property:measured} por {method}. Enviarlo como el primero.',
  'result-out-of-range':
    '{property:property} no puede ser {amount}: está entre {least} y {most}. Revisar la unidad y la coma decimal.',
  'result-unusual':
    '{property:property} de {amount} queda lejos de lo habitual aquí (de {least} a {most}). Leer otra vez el valor; si es lo medido, marcar que es así y enviarlo de nuevo.',
  'result-before-sample':
    'La muestra {sample} se tomó el {takenAt}. Su resultado no puede ser anterior: corregir la hora.',
  'samples-title': 'Muestras',
  'samples-caption': 'Muestras, la última registrada primero',
  'sample-title': 'Muestra {sample}',
  'sample-taken': 'Tomada: {at}',
  'sample-of-bag': 'Big bag {bag}',
  'sample-of-hour': 'Secador {dryer}, una hora desde {from}',
  'sample-of-shift': 'Secador {dryer}, muestra compuesta del turno de {from} a {until}',
  'sample-bags': 'Big bags que representa',
  'sample-no-bags': 'En ese tiempo todavía no se ha llenado ningún big bag hasta el final.',
  'results-caption': 'Resultados en el orden en que se comunicaron; cuentan todos los válidos',
  'no-results-yet': 'Todavía sin resultados',
  'lab-column-sample': 'Muestra',
  'lab-column-stands-for': 'Representa',
  'lab-column-taken': 'Tomada',
  'lab-column-results': 'Resultados',
  'lab-column-property': 'Propiedad',
  'lab-column-method': 'Método',
  'lab-column-amount': 'Valor',
  'lab-column-analysed': 'Analizado',
  'lab-column-note': 'Nota',
  'lab-note-void': 'anulado: corregido después',
  'lab-note-retest': 'repetición: queda junto al primero',
  'property-moisture-percent': 'Humedad, %',
  'property-colour-iu': 'Color, IU',
  'measured-moisture-percent': 'humedad',
  'measured-colour-iu': 'color',
});
