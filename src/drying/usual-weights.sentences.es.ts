import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'safe-load-missing': 'Indicar el tipo de big bag o la carga que da la etiqueta del fabricante. No se indicó ninguna.',
  'net-not-usual':
    'El big bag {bag} tendría {kilograms} kg netos; los de este grado en esta báscula suelen tener de {least} a {most} kg. Mirar la báscula otra vez. Si es así, confirmarlo: queda registrado y calidad lo revisa.',
  'tare-not-usual':
    'La tara del big bag {bag} es de {kilograms} kg; los de su tipo suelen tener de {least} a {most} kg. ¿Es el tipo correcto? Si es así, confirmarlo: queda registrado y calidad lo revisa.',
  'net-not-usual-kept':
    'El big bag {bag} se cerró con {kilograms} kg netos, fuera de lo habitual ({least} a {most} kg), tras mirar dos veces. Averiguar la causa: báscula, tara o llenado.',
  'tare-not-usual-kept':
    'El big bag {bag} se cerró con una tara de {kilograms} kg, fuera de lo habitual de su tipo ({least} a {most} kg), tras mirar dos veces. Averiguar la causa.',
});
