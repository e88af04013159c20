import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'weight-messages': 'pesos por MQTT',
  'form-weight-message': 'letras, cifras, puntos, dos puntos, guiones bajos o guiones, 64 como máximo',
  'mqtt-weigher-unknown':
    'Llegaron pesos por MQTT en el tema de una pesadora {named}, y ninguna pesadora se llama así. No se admitió nada. Dar a la pesadora en el tema el código que tiene aquí, o instalarla.',
  'mqtt-not-allowed':
    'Llegaron por MQTT pesos de la pesadora {weigher}, que no puede enviar por esa vía. No se admitió nada. Si son suyos, permitirlo en la página de la pesadora; si no, mirar quién envía.',
  'weight-message-refused':
    'Se rechazaron pesos de la pesadora {weigher} que llegaron por MQTT, el primero porque: {=reason} Cada línea errónea se dijo a la pesadora en su tema de respuestas. Hacer que los pesos se envíen otra vez, o anotar por qué faltan.',
  'check-message-refused':
    'Se rechazó un control que la pesadora {weigher} hizo por sí misma y envió por MQTT: {=reason} El porqué se dijo a la pesadora en su tema de respuestas. Hacer que se envíe otra vez, o hacer el control a mano.',
  'check-message-too-large':
    'El mensaje tiene {length} bytes; un control admite {most} como máximo. De este no se admitió nada.',
  'check-not-json':
    'El mensaje no es un objeto JSON. Enviar un control en un mensaje, como lo admite la ruta de controles.',
  'weight-message-kept':
    'La pesadora {weigher} hace que el intermediario guarde (retain) sus mensajes de pesos. Solo se guarda el último, y vuelve con cada nueva suscripción; contó una vez. Desactivar retain en la pesadora.',
  'mqtt-broker-away':
    'Desde {since} no pueden llegar pesos por MQTT: el intermediario {host} no responde, o rechaza. Mirar si funciona, y su dirección y contraseña en los ajustes. Lo que envían las pesadoras entre tanto espera en el intermediario, si funciona.',
  'message-too-large':
    'El mensaje tiene {length} bytes; se admiten {most} como máximo. Enviar menos pesos en un mensaje; de este no se admitió nada.',
  'message-empty':
    'El mensaje no contiene ninguna línea de un peso. Enviar una línea por paquete, con fin de línea también en la última.',
  'message-of-other-type':
    'El mensaje es de tipo {type}. Enviar application/x-ndjson o text/csv, o dejar fuera el tipo: entonces lo dice el primer byte.',
});
