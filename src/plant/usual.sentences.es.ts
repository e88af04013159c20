import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'bag-type': 'tipo de big bag',
  'tare-band-crossed':
    'La tara habitual ({usual} g) tiene que estar entre la menor ({least} g) y la mayor ({most} g). Corregir las tres.',
  'tare-above-safe-load':
    'Un big bag vacío de {most} g no puede estar por encima de su propia carga segura de {safeLoadGrams} g. Leer otra vez la etiqueta del fabricante.',
  'usual-net-crossed': 'El neto habitual menor ({least} g) está por encima del mayor ({most} g). Corregir los dos.',
  'site-in-use':
    'Ya se han dado números ({series}), y hay documentos que los llevan: la zona horaria, el día de producción y los números GS1 de esta planta se quedan. Solo se puede cambiar su nombre.',
  'shifts-begin-otherwise':
    'Los turnos empiezan con el día de producción a las {start}. Dejar así el día de producción; turnos nuevos pueden dividirlo de otra manera.',
  'rules-there-already':
    'Estas reglas están fijadas desde {since}. Las posteriores las fija un responsable de calidad; no se ha cambiado nada.',
});
