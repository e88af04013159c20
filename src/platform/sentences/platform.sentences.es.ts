import { addSentences } from './sentences.js';

addSentences('es', {
  paper: 'documento',
  'not-signed-in': 'No hay sesión iniciada. Iniciar sesión y repetirlo; no se ha cambiado nada.',
  'not-permitted':
    'El puesto que se tiene no permite esto. Pedirlo a quien pueda hacerlo, o a un administrador que cambie el puesto.',
  'form-not-ours':
    'Este formulario no lo hizo este servidor para esta sesión. Abrir de nuevo la página y enviarlo desde ella.',
  'bad-form':
    'Algo de lo enviado no se puede usar. Junto a cada campo se indica lo que admite; no se ha cambiado nada.',
  'not-found': 'Aquí no existe: {kind} «{asked}». Comprobar el número, o buscarlo.',
  'no-such-page': 'Esa página no existe. Usar el buscador, o volver atrás.',
  'address-not-read':
    'No se puede leer esta dirección: una parte no es identificador de nada. Seguir un enlace, o usar el buscador.',
  'server-fault':
    'El servidor ha fallado en esto. Nada ha quedado a medias; intentarlo otra vez, y avisar al administrador si se repite.',
  'too-many-requests': 'Demasiadas peticiones desde este lugar. Esperar un minuto e intentarlo otra vez.',
  'body-too-large': 'Lo enviado es más de lo que admite este servidor. Enviar menos de una vez.',
  'body-cut-off':
    'Lo enviado se cortó antes de su fin, o no se pudo desempaquetar. No se admitió nada; enviarlo otra vez.',
  'body-not-streamed': 'Admite {types}. Enviarlo con ese Content-Type.',
  'body-not-read': 'Lo enviado no se ha podido leer como {kind}. Enviar JSON válido o un formulario simple.',
  'key-missing':
    'Enviar con cada cambio una cabecera Idempotency-Key (de 8 a 64 letras, cifras o guiones), nueva para cada uno.',
  'key-used-for-other-content':
    'Esta clave ya se usó para otro contenido. Hacer una clave nueva para un cambio nuevo; el primero sigue en pie.',
  'still-being-recorded':
    'El mismo cambio se está registrando ahora. Esperar un momento y enviarlo otra vez con la misma clave.',
  'page-is-stale':
    'Otra persona lo ha cambiado desde que se abrió la página. Mirar qué ha cambiado y decidir de nuevo.',
  'preview-is-stale':
    'Desde que se miró se ha registrado algo: la corrección cambiaría ahora otra cosa. Mirarla de nuevo y decidir.',
  'time-ahead':
    'La hora indicada ({stated}) va más de cinco minutos por delante de la del servidor ({now}). Corregir la hora.',
  'time-too-far-back':
    'La hora indicada ({stated}) es de hace más de {hours} {hours?hora|horas}. Pedir a calidad que lo registre.',
  'reason-needed': 'Se registra {minutes} {minutes?minuto|minutos} después de ocurrir. Indicar el motivo del retraso.',
  'field-missing': 'Falta este dato.',
  'field-unknown': 'Este campo no se conoce aquí. Quitarlo.',
  'field-not-text': 'Admite un texto de {least} a {most} caracteres.',
  'field-not-whole': 'Admite un número entero de {least} a {most}.',
  'field-not-decimal': 'Admite un número decimal de {least} a {most}, como {example}.',
  'field-whole-with-separator':
    'En un número entero, un punto o una coma se pueden leer de dos maneras. Escribir solo las cifras, como 1250, o con un espacio, 1 250; de {least} a {most}.',
  'field-not-kilograms':
    'Admite kilogramos de {least} a {most} con tres decimales como máximo, como 996.5 o 996,5. Solo un espacio puede separar los millares.',
  'field-not-instant': 'Admite un instante como 2026-03-12T07:41:03.412Z o 2026-03-12T08:41:03+01:00.',
  'field-not-local-time':
    'Los relojes de la planta no mostraron esta hora. Admite un día y una hora como 12 mar 2026, 07:41.',
  'field-not-day': 'Admite un día como 2026-03-12.',
  'field-not-choice': 'Admite uno de estos valores: {choices}.',
  'field-not-flag': 'Admite true (sí) o false (no).',
  'field-not-id': 'Admite un identificador (UUID).',
  'field-not-list': 'Admite una lista de {least} a {most} elementos.',
  'field-not-form': 'Admite un objeto con campos propios.',
  'field-not-pattern': 'Admite {form:form}.',
  'form-hash': '64 cifras hexadecimales',
  'form-clock-time': 'una hora del día como 06:00',
  'form-property': 'letras minúsculas, cifras y guiones, con la unidad, como moisture-percent',
  'form-cycle': 'códigos de turno separados por espacios, uno por día, con un guion para un día libre',
  'form-day-and-time': 'un día y una hora como 2026-03-12T07:41:20',
  'form-small-code': 'letras minúsculas, cifras y guiones',
  'form-sscc': 'un SSCC de 18 cifras',
  'form-person-code': 'de 2 a 30 letras, cifras, puntos o guiones',
  'form-weight-series': 'letras, cifras, puntos o guiones, 30 como máximo',
  'form-pin': 'de 4 a 8 cifras',
  'form-property-and-method': 'una propiedad y su método',
});
