import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  recall: 'retirada',
  'recall-answer': 'respuesta de un cliente',
  'recall-scope-empty':
    'Nada entra en esta retirada: ni big bag ni paquete. No se ha abierto nada. Comprobar el código y la hora, o elegir otra cosa.',
  'recall-time-not-usable':
    'El tiempo debe empezar antes de acabar: {fromAt} a {untilAt}. Indicar cuándo empezó y cuándo acabó.',
  'recall-safety-covers-possible':
    'Una retirada por seguridad cubre todo lo posible. Dejarla en posible, o elegir calidad si nadie puede sufrir daño.',
  'recall-likely-needs-reason':
    'Solo se va a retirar lo seguro y lo probable. Escribir por qué puede quedarse el resto, o retirar todo lo posible.',
  'recall-signed': 'La retirada {recall} está firmada. Se puede leer; abrir otra para lo que vino después.',
  'recall-marked-already': 'Esto ya consta en la retirada {recall}: {mark:recall-mark}. Seguir con el paso siguiente.',
  'recall-nothing-has-no-amount':
    'El cliente aún no lo sabe, así que no hay cantidad. Dejarla vacía, o elegir qué fue de los paquetes.',
  'exercise-places-no-hold':
    '{recall} es un simulacro y no bloquea nada. Si hay peligro, abrir una retirada o poner una retención.',
  'recall-held-already': 'Todo lo que cubre la retirada {recall} ya está retenido. Seguir con los clientes.',
  'recall-clock-running': 'El reloj de {recall} sigue en marcha. Pararlo primero y luego firmar.',
  'recall-needs-explanation':
    '{recall} no cuadra: faltan {packs} paquetes por justificar, o las respuestas contradicen lo enviado. Buscar los registros, o escribir qué lo explica, y luego firmar.',
  'recall-mark-customers-listed': 'lista de clientes lista',
  'recall-mark-stock-blocked': 'existencias bloqueadas',
  'recall-mark-clock-stopped': 'reloj parado',
});
