import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'search-title': '¿De dónde vino y adónde fue?',
  'search-label': 'Escanear o escribir cualquier código',
  'search-button': 'Seguir el hilo',
  'search-hint':
    'Un código de un paquete, con o sin la hora · el número de un big bag · un SSCC · un albarán · una bobina de film · una corrida. Los espacios no importan.',
  'search-which': '«{code}» corresponde a varias cosas. ¿Cuál es la que se tiene en la mano?',
  code: 'objeto con el código',
  'thread-kind': 'clase de hilo',
  'home-desks': 'Puestos de trabajo',
});
