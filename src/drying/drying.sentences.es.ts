import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'bulk-bag': 'big bag',
  'dryer-run': 'corrida de secado',
  'goods-receipt': 'recepción',
  'bag-weighing': 'pesada',
  'dryer-has-open-run': 'El secador {dryer} sigue en la corrida {run}. Terminar antes esa corrida.',
  'time-before-last-run-end':
    'La corrida {run} de este secador terminó el {endedAt}. Indicar un comienzo igual o posterior.',
  'dryer-run-ended':
    'La corrida {run} terminó el {endedAt}. Usar la corrida abierta en ese momento, o corregir la hora.',
  'time-before-run': 'La corrida {run} empezó el {startedAt}. Corregir la hora, o usar la corrida anterior.',
  'bags-begun-later':
    'El big bag {bag} de la corrida {run} se empezó el {endedAt} o después. Indicar un final posterior, o corregir el big bag.',
  'time-before-fill-start':
    'El llenado del big bag {bag} empezó el {startedAt}. Su final no puede ser anterior: corregir la hora.',
  'time-before-fill-end': 'El big bag {bag} se llenó el {filledAt}. Indicar una hora posterior.',
  'bag-already-closed':
    'El big bag {bag} ya está cerrado y pesado. Pesarlo otra vez si el peso es dudoso, o corregir la pesada.',
  'bag-not-closed': 'El big bag {bag} todavía se está llenando. Cerrarlo antes con sus pesos.',
  'gross-below-tare': 'El bruto ({grossGrams} g) es menor que la tara ({tareGrams} g). Leer otra vez la báscula.',
  'net-not-above-zero':
    'El bruto y la tara son iguales ({grossGrams} g): el big bag {bag} no contiene nada. Leer otra vez la báscula.',
  'over-safe-load':
    'El big bag {bag} pesaría {grossGrams} g con su propio peso, por encima de su carga segura de {safeLoadGrams} g. No levantarlo; sacar azúcar y pesarlo otra vez.',
  'bag-not-full':
    'El big bag {bag} no está lleno ({status:bag-status}). Solo se pesa otra vez un big bag lleno; uno empezado se pesa de vuelta al terminar su volcado.',
  'bag-not-in-store':
    'El big bag {bag} no se puede mover ({status:bag-status}). Se pueden mover los llenos y los empezados.',
  'bag-already-there': 'El big bag {bag} ya está en {place}.',
  'bag-in-use':
    'El big bag {bag} ya se ha usado ({status:bag-status}): parte de su azúcar siguió adelante. Corregir antes esos registros.',
  'bag-needs-its-weight':
    'El big bag {bag} no puede quedar sin esta pesada: siguió adelante, o se pesó otra vez. Indicar los pesos correctos en su lugar.',
  'bag-changed-meanwhile': 'Otra persona acaba de cambiar el big bag {bag}. Mirarlo otra vez.',
  'weigh-back-belongs-to-tip': 'Esta pesada del big bag {bag} terminó un volcado. Corregir el volcado en su lugar.',
  'nothing-corrected': 'Decir qué es lo correcto: indicar al menos bruto, tara, báscula u hora.',
  'receipt-already-recorded':
    'El documento {document} con este lote está registrado como {receipt}. No se ha registrado nada dos veces.',
  'opening-stock-too-late':
    'Las existencias iniciales son lo que había antes de {first} ({beganAt}). Registrar estos big bags como recepción o por su corrida de secado.',
  'sscc-not-valid': '{sscc} no es un SSCC: su dígito de control no es correcto. Escanearlo otra vez.',
  'sscc-is-ours': '{sscc} es de la serie propia de esta planta. Quitarlo, y el big bag recibirá un número nuevo.',
  'sscc-taken': '{sscc} ya es el big bag {bag}.',
  'label-printed-already':
    'El big bag {bag} ya tiene etiquetas ({copies}). Decir por qué hace falta otra; llevará la palabra COPY (copia).',
  'weighed-on-doubtful-scale':
    'El big bag {bag} se pesó en una báscula con la comprobación vencida o no superada. Se puede volcar, no vender: pesarlo otra vez en una báscula en regla.',
  'filled-over-safe-load':
    'El big bag {bag} pesa más que su carga segura. Mantener lejos a las personas, no levantarlo; sacar azúcar de forma segura y pesarlo otra vez.',
  'weight-corrected-after-tip':
    'El peso del big bag {bag} se corrigió después de volcar azúcar de él. Mirar los volcados y balances que usaron el anterior.',
  'weight-corrected-after-loading':
    'El peso del big bag {bag} se corrigió después de cargarlo. Mirar el albarán y avisar al cliente.',
});
