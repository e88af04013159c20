import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'open-point': 'punto abierto',
  'point-ended-already': 'Este punto ya está terminado ({how:point-how}). Mirar otra vez la lista.',
  'point-is-for-another': 'Este punto es para el puesto: {role:role}. Pedirle que lo conteste.',
  'scale-check-overdue':
    'La báscula {scale} tiene la comprobación vencida; lo que pese es dudoso hasta entonces. Hacerla comprobar con pesas conocidas.',
  'scale-check-failed':
    'La báscula {scale} no pasó su última comprobación. Retirarla del uso, y decidir sobre lo que pesó desde la comprobación anterior.',
  'points-title': 'Puntos abiertos',
  'points-says':
    'Lo que, según las reglas de la planta, alguien tiene que mirar. Un punto desaparece cuando desaparece su causa, o cuando alguien dice por qué queda así.',
  'points-none': 'No hay nada abierto.',
  'points-open': '{count} {count?abierto|abiertos}, del más reciente al más antiguo',
  'points-ended': 'Terminados últimamente ({count})',
  'points-what': 'Qué, y qué hacer',
  'points-subject': 'Sobre',
  'points-for': 'Para',
  'points-raised': 'Abierto',
  'points-how': 'Cómo',
  'points-ended-at': 'Cuándo',
  'points-cleared': 'su causa desapareció',
  'points-explained': 'explicado',
  'point-how-cleared': 'su causa desapareció',
  'point-how-explained': 'explicado',
  'point-how-ended': 'terminado',
  'points-role': 'Para el puesto',
  'points-all-roles': 'todos los puestos',
  'points-show': 'Mostrar',
});
