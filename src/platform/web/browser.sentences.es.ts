import { addSentences } from '../sentences/sentences.js';
import type { browserSentences } from './browser.sentences.js';

export const browserSentencesInSpanish: Readonly<Record<keyof typeof browserSentences, string>> = {
  'browser-language': 'es',
  'browser-on-device': 'EN ESTE EQUIPO',
  'browser-kept-here':
    'Anotado a las {at} y guardado en este equipo. Se envía solo cuando vuelve la red. Seguir con la próxima anotación.',
  'browser-one-waits': 'una anotación espera en este equipo',
  'browser-many-wait': '{count} anotaciones esperan en este equipo',
  'browser-some-refused': '{count} rechazadas: mirarlas',
  'browser-off-line': 'Sin red',
  'browser-off-line-since': 'Sin red. Esta página está como a las {at}. Lo que se anota queda guardado en este equipo.',
  'browser-off-line-says':
    'Esta página necesita la red. Volcados, palés, paradas, recuentos y controles se pueden anotar en las páginas de abajo; se envían cuando vuelve la red. Levantar retenciones, cerrar entregas y hacer documentos, solo con red.',
  'browser-badge': 'TARJETA',
  'browser-badge-unknown': 'Nadie tiene aquí esta tarjeta. Escanearla otra vez o entrar de otra manera.',
  'browser-badge-needs-network':
    'Sin red no se puede cambiar de persona. Lo que se anota sigue a nombre de la persona de arriba.',
  'browser-scans-not-taken': 'Entretanto no se tomó: {codes}. Escanearlo otra vez.',
  'browser-no-such-command':
    'Esta página no tiene esa acción. Abrir la página donde se hace y escanear otra vez la tarjeta.',
  'browser-not-a-bag': 'COMPROBAR',
  'browser-not-a-bag-says':
    'Sin red, y «{code}» no es número de big bag: su carácter de control no cuadra. Escanearlo otra vez o leerlo de la etiqueta.',
  'browser-bag-not-listed':
    'Sin red, y este big bag no estaba en el almacén a las {at}. Si se vuelca de todos modos, anotar el volcado: queda registrado como ocurrido.',
  'browser-bag-released': 'LIBERADO',
  'browser-bag-waiting': 'EN ESPERA',
  'browser-bag-on-hold': 'RETENIDO',
  'browser-bag-rejected': 'RECHAZADO',
  'browser-bag-concession': 'CONCESIÓN',
  'browser-bag-other-grade': 'OTRA CALIDAD',
  'browser-bag-known':
    'Sin red. Big bag {number}, calidad {grade}, según datos de las {at}. Anotar el volcado: queda registrado como ocurrido.',
  'browser-bag-must-not':
    'Sin red. Big bag {number}, calidad {grade}, según datos de las {at}: no volcarlo. Tomar otro big bag. Si ya se volcó, anotar el volcado: queda registrado como ocurrido.',
  'browser-enter-tip': 'Anotar el volcado',
  'browser-signed-out':
    'La sesión está cerrada. Esta página ya no sigue a la planta; lo que está escrito en ella sigue aquí. Entrar al lado, y después volver aquí y seguir.',
  'browser-sign-in-beside': 'Entrar',
  'browser-other-here':
    'Ahora está en este dispositivo otra persona. Esta página ya no sigue a la planta, y desde ella no se puede enviar nada. Lo que está escrito en ella sigue aquí: anotarlo, y después abrir la página de nuevo.',
  'browser-open-anew': 'Abrirla de nuevo',
  'browser-this-changed': 'Esto ha cambiado.',
  'browser-show-change': 'Mostrarlo',
  'browser-number-pad': 'Teclas para el número',
  'browser-rub-out': 'Borrar la última cifra',
  'browser-less': '{step} menos',
  'browser-more': '{step} más',
  'browser-number-done': 'Listo',
  'browser-entry-on-device': 'en este equipo',
  'browser-entry-sent': 'enviada',
  'browser-entry-accepted': 'aceptada',
  'browser-entry-kept': 'apartada para que alguien la mire',
  'browser-entry-refused': 'rechazada',
  'browser-entry-again': 'Enviar otra vez',
  'browser-entry-put-away': 'Retirar de la lista',
  'browser-word-tip': 'Volcado',
  'browser-word-pallet': 'Palé',
  'browser-word-stop': 'Parada',
  'browser-word-count': 'Recuento',
  'browser-word-check': 'Control de línea',
  'browser-word-sweepings': 'Barreduras',
  'browser-word-reject': 'Rechazo',
  'browser-word-sample': 'Muestra',
  'browser-word-setting': 'Ajuste',
  'browser-word-hand-sample': 'Muestra a mano',
  'browser-word-bag': 'Big bag',
  'browser-reading-passed': '{off} g, dentro de ± {allowed} g: conforme',
  'browser-reading-failed': '{off} g, fuera de ± {allowed} g: NO CONFORME',
  'browser-reading-none': 'La pesadora no marca nada con él: NO CONFORME',
  'browser-reading-both': 'O una lectura, o que no marca nada: borrar una de las dos.',
  'browser-reading-no-number': 'No es un número de gramos. Una coma o un punto, y sin unidad.',
  'browser-reading-thousandth':
    'La milésima parte de lo que pesa: ¿kilogramos por gramos, o una coma entre millares? Introducir gramos.',
  'browser-reading-thousandfold': 'Mil veces lo que pesa: ¿miligramos por gramos? Introducir gramos.',
  'browser-reading-below-zero': 'Menos que nada. Mirar el cero y la tara, y pesarlo otra vez.',
  'browser-reading-absurd': 'Mucho más de lo que pesa. Mirar si era este paquete, y pesarlo otra vez.',
  'browser-check-open': 'Introducir lo que marca la pesadora con cada paquete de prueba. Si pasa, se calcula.',
  'browser-check-passed': 'CONFORME: ninguna lectura se desvía más de lo que puede. Firmar.',
  'browser-check-failed':
    'NO CONFORME: una lectura se desvía más de lo que puede. Indicar qué se hizo en el acto, y firmar.',
  'browser-sign-open': 'FIRMAR',
  'browser-sign-passed': 'FIRMAR: CONFORME',
  'browser-sign-failed': 'FIRMAR: NO CONFORME',
  'browser-scanner-fine': 'Este escáner envía cada carácter de las etiquetas propias tal como está impreso.',
  'browser-scanner-wrong':
    'Este escáner no envía lo que está impreso. Poner su idioma de teclado igual al de este equipo y escanear otra vez.',
  'browser-scanner-other': '«{code}» no es el código de referencia. Escanear el de la hoja.',
  'browser-scanner-lower-case':
    'Envía letras minúsculas: quitar el bloqueo de mayúsculas del equipo o la conversión de letras del escáner.',
  'browser-scanner-swap': '{character} llega como {came}.',
  'browser-scanner-prefix': 'Envía «{prefix}» antes de un código. Desde ahora este equipo lo espera.',
  'browser-scanner-suffix': 'Envía «{suffix}» después de un código. Quitarlo en el escáner.',
  'browser-scanner-end': 'Termina el código con la tecla {key}. Desde ahora este equipo la espera.',
  'browser-scanner-no-end': 'No termina el código con ninguna tecla. Ajustar el escáner para que envíe Intro al final.',
  'browser-scanner-speed': 'Entre dos caracteres pasan {gap} milisegundos; hasta 30 se toma por un escaneo.',
};

addSentences('es', browserSentencesInSpanish);
