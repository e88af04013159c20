import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'label-of-another-pallet':
    'Es la etiqueta del palé {other}; el que se acaba de montar es {pallet}. Quitarla, poner la correcta y escanearla. Si ambas ya están pegadas, indicar que las dos etiquetas están cambiadas.',
  'pack-of-another-lot':
    'El paquete {pack} no es de ningún lote del palé {pallet} ({lots}). Escanear un paquete de este palé; si lo es, parar y mirar qué palé lleva esta etiqueta.',
  'label-not-scanned-back':
    'La etiqueta del palé {pallet} se imprimió y no se ha vuelto a escanear sobre él. Ir al palé y escanear su etiqueta.',
  'swap-of-other-formats':
    'Los palés {one} ({oneFormat}) y {other} ({otherFormat}) son de dos formatos. Dar a cada uno una etiqueta nueva desde su página.',
  'labels-swapped-loaded':
    'Las etiquetas de los palés {pallet} y {other} estaban cambiadas, y {pallet} está en un vehículo o ha salido. Mirar su entrega, corregir los papeles y avisar al cliente.',
  'labels-swapped-held':
    'Las etiquetas del palé {pallet} y de otro estaban cambiadas, y está retenido. Mirar si la retención está en el palé correcto.',
});
