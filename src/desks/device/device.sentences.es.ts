import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'way-this-device': 'Este equipo',
  'device-title': 'Este equipo',
  'device-is': 'Este es {code}.',
  'device-not-enrolled-here': 'Este equipo no está dado de alta: se entra en él solo con código y contraseña.',
  'device-queue': 'Lo que espera en él',
  'device-size': 'Tamaño de la pantalla',
  'device-scanner': 'Probar el escáner',
  'device-back': 'Este equipo',
  'queue-title': 'Anotaciones en este equipo',
  'queue-says':
    'Lo que se anota aquí se guarda hasta que el servidor lo acepta, sea de quien sea. Se envía por orden y por sí solo.',
  'queue-none': 'Aquí no hay nada guardado.',
  'queue-send-now': 'Enviar ahora',
  'entry-column-time': 'Anotada',
  'entry-column-what': 'Qué',
  'entry-column-person': 'De',
  'entry-column-state': 'Dónde está',
  'entry-column-said': 'Lo que dijo el servidor',
  'entry-column-acts': 'Por hacer',
  'size-title': 'Tamaño de la pantalla',
  'size-says':
    'Apoyar una tarjeta bancaria sobre la dibujada. Ensancharla o estrecharla hasta que coincidan: así las teclas son tan grandes como pide un guante.',
  'size-card': 'Una tarjeta bancaria, 85,60 mm de ancho',
  'size-narrower': '{step} más estrecha',
  'size-wider': '{step} más ancha',
  'scanner-title': 'Probar el escáner',
  'scanner-says': 'Escanear este código de la pantalla o de una hoja impresa. La página dice qué envía el escáner.',
  'scanner-waits': 'Aún no se ha escaneado nada.',
  'scanner-code': 'El código de referencia, como símbolo',
});
