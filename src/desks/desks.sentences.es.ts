import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'search-title': '¿De dónde vino y adónde fue?',
  'search-label': 'Escanear o escribir cualquier código',
  'search-button': 'Seguir el hilo',
  'search-hint':
    'Un código de un paquete, con o sin la hora · el número de un big bag · un SSCC · un símbolo GS1 · un albarán o un pedido · una reclamación · un lote de film o de forro · una corrida. Los espacios no importan; O, I y B valen por 0, 1 y 8 donde solo puede haber una cifra.',
  'search-which': '«{code}» corresponde a varias cosas. ¿Cuál es la que se tiene en la mano?',
  code: 'objeto con el código',
  'thread-kind': 'clase de hilo',
  'home-desks': 'Puestos de trabajo',
  'search-more': 'Solo se muestran los últimos {count}. Escribir más del código.',
  'code-time-impossible':
    '«{at}» no es una hora: las horas llegan a 23 y los minutos a 59. Leerla otra vez en el paquete, o dejarla fuera.',
  'fits-code': 'su código se lee así',
  'fits-pattern': 'leído según el patrón de código de {format}',
  'fits-look-alike': '{typed} en el lugar {place} leído como {read}',
  'fits-begins': 'su código empieza así',
  'fits-inside': 'su código contiene esto',
  'fits-item': 'artículo y lote del símbolo',
  'fits-item-only': 'el símbolo nombra el artículo y ningún lote: uno de sus últimos lotes',
  'fits-sscc': 'su SSCC',
  'fits-bag-number': 'su número',
  'fits-note': 'el número de su albarán',
  'fits-order': 'el número de pedido del cliente',
  'fits-film': 'el código de la bobina o de su lote',
  'fits-liner': 'el lote de saco o forro de {count} {count?big bag|big bags}',
  'fits-run': 'el número de la corrida',
  'fits-id': 'su propio identificador',
  'fits-complaint': 'el número de la reclamación',
  'fits-coming': 'la hora tal como llegó a las {at}',
  'fits-any-coming': 'la hora llegó {count} veces y nadie sabe cuál fue',
  'fits-time-not-printed':
    'ningún paquete suyo puede llevar las {at}: se envasó de {from} a {until}. Leer otra vez la hora, o tomar el lote entero',
  'fits-not-counted': 'aún no se ha contado ningún paquete suyo y nada se sabe de las {at}: el lote entero',
});
