import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'form-the 18 digits of an SSCC': 'las 18 cifras de un SSCC',
  'sscc-block': 'bloque de números de palé',
  'block-needs-device':
    'Los números se apartan solo para un aparato dado de alta, y este no lo es. Formar el palé aquí mientras haya red: recibe el número siguiente.',
  'sscc-not-set-aside':
    'El número {sscc} no se apartó para nada. Leerlo otra vez de la etiqueta o de la hoja; un palé sin número recibe el siguiente.',
  'sscc-of-another':
    'El número {sscc} se apartó para otro aparato u otra hoja. Leerlo otra vez; un palé sin número recibe el siguiente.',
  'sscc-used-already':
    'El número {sscc} ya es de un palé, y cada número se usa una vez. Leerlo otra vez; dar a este palé otro número.',
  'pallet-came-out-of-order':
    'El palé {pallet} se formó el {builtAt}, pero llegó después del palé {other}, formado el {otherBuiltAt}. Mirar en los códigos impresos qué paquetes están en cada uno y corregir los palés si están cambiados.',
});
