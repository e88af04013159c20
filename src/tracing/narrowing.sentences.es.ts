import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'assessment-needed':
    '{hold} es una retención de seguridad. Escribir también la evaluación: por qué estas partes no pueden hacer daño y qué se miró.',
  'nothing-to-take-out': 'No se eligió nada. Elegir lo que se va a sacar de la retención.',
  'minutes-turned-round': 'Los minutos terminan antes de empezar. Poner primero la hora más temprana.',
  'part-not-reached':
    'La retención {hold} no alcanza {unit}. Mirar otra vez la retención y elegir de lo que alcanza ahora.',
  'part-is-the-hold': 'La retención {hold} está puesta sobre {unit} mismo. Levantarla en lugar de reducirla a nada.',
  'no-pack-in-these-minutes':
    'Según los recuentos, ningún paquete de {unit} se envasó con seguridad en estos minutos. Elegir más tiempo, o los palés.',
  'held-after-leaving':
    'Por una corrección, la retención {hold} alcanza ahora {unit}, que está en el vehículo de la entrega {delivery} o ha salido con ella, para {customer}. Mirar la retención, parar el vehículo o avisar al cliente, y responder aquí lo que se hizo.',
  'held-unit': 'unidad alcanzada por una retención',
  'hold-narrowing': 'reducción de una retención',
});
