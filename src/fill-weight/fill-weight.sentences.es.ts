import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'hand-sample': 'muestra pesada a mano',
  'net-far-from-nominal':
    'El paquete {pack} de la muestra pesa {grams} g, más de un {percent} % lejos del nominal de {nominalGrams} g. Pesarlo otra vez; mirar si se leyó el bruto como neto, o si es de otro formato.',
  'sample-in-kilograms':
    'Los paquetes de la muestra pesan unos {grams} g donde lo nominal son {nominalGrams} g: parecen kilogramos. Introducir gramos.',
  'pack-weigher': 'pesadora de paquetes',
  'device-is-no-machine':
    '{device} no es una máquina: en él trabajan personas. Añadir una máquina en dispositivos e instalar esa como pesadora de paquetes.',
  'machine-weighs-already':
    'La máquina {device} ya es la pesadora de paquetes {weigher}. Retirar primero esa, o elegir otra máquina.',
  'tare-correction': 'corrección de tara',
  'nothing-to-add':
    'Una corrección de 0 mg no cambia nada. Indicar lo que se suma a cada neto, por debajo de cero si los paquetes se tararon de menos.',
  'no-weights-in-range':
    'La corrida {run} no tiene pesos de esa pesadora y ese contador de {from} a {to}. Buscar el intervalo en la corrida e indicarlo de nuevo.',
  'weights-not-readable':
    'Pesos individuales de la corrida {run} se eliminaron o están dañados, así que sus sumas no se pueden recalcular. Anotar la corrección en la corrida.',
  'weights-too-young':
    'Los pesos individuales se guardan hasta que son anteriores a {before}. Indicar ese instante u otro anterior, o pedir que se cambie el ajuste WEIGHT_MONTHS.',
});
