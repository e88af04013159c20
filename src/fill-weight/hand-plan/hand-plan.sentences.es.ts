import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'hand-sample-overdue':
    'Línea {line}: una muestra a mano de {count} {count?paquete|paquetes} tocaba el {at}. Tomarlos de la línea y pesarlos ahora.',
  'hand-sample-on-failed-scale':
    'Línea {line}, corrida {run}: la muestra a mano del {at} se pesó en la báscula {scale}, que no había pasado su control. Hacer pesar paquetes otra vez en otra báscula, o retirar la muestra.',
  'no-hand-sample-plan': 'Nada está previsto para la línea {line} y ese formato. Mirar otra vez los planes.',
});
