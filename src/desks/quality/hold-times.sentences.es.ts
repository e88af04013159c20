import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'hold-shift-name': '{code}, {on} turno {shift}',
  'hold-new-times': 'Solo lo que puede haberse envasado de {from} a {until}: hasta el primer recuento posterior.',
  'hold-new-shift': 'Un turno entero de un secador o de una línea',
  'hold-new-shift-says':
    'De un secador: cada big bag que se cerró en él. De una línea: cada paquete que puede haberse envasado en él.',
  'hold-new-place': 'Secador o línea',
  'hold-new-on': 'Día de producción',
  'hold-new-shift-code': 'Turno',
  'hold-new-minutes': 'Unos minutos de una corrida',
  'hold-new-run': 'Corrida',
  'hold-new-from': 'Desde',
  'hold-new-until': 'Hasta',
  'hold-no-such-shift': 'No hay turno {shift} el {on}. Elegir otro turno u otro día.',
});
