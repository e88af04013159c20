import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'hand-sample': 'muestra pesada a mano',
  'net-far-from-nominal':
    'El paquete {pack} de la muestra pesa {grams} g, más de un {percent} % lejos del nominal de {nominalGrams} g. Pesarlo otra vez; mirar si se leyó el bruto como neto, o si es de otro formato.',
  'pack-weigher': 'pesadora de paquetes',
  'device-is-no-machine':
    '{device} no es una máquina: en él trabajan personas. Añadir una máquina en dispositivos e instalar esa como pesadora de paquetes.',
  'machine-weighs-already':
    'La máquina {device} ya es la pesadora de paquetes {weigher}. Retirar primero esa, o elegir otra máquina.',
});
