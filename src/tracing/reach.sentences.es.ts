import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'bag-reach-days-turned-round':
    'El último día ({until}) es anterior al primero ({from}). Indicar primero el día anterior.',
  'bag-reach-too-long': 'No se leen más de {days} días a la vez. Elegir un tiempo más corto.',
  'bag-reach-title': 'Hasta dónde llega un big bag',
  'bag-reach-says':
    'Si un big bag estuviera mal, ¿cuánto tendría que volver? Todos los paquetes que pueden contener algo de él, hiciera lo que hiciera la tolva.',
  'bag-reach-from': 'Primer día de producción',
  'bag-reach-until': 'Último día de producción',
  'bag-reach-look': 'Mirar',
  'bag-reach-no-bags': 'En estos días no se volcó ningún big bag.',
  'bag-reach-answer': 'Un big bag llegó a {mean} t de media y a {worst} t en el peor caso.',
  'bag-reach-with-empties':
    'Si cada tolva se hubiera vaciado y comprobado en cada cambio de turno ({empties} {empties?vez|veces} más), habrían sido {less} t de media: un {percent} % menos.',
  'bag-reach-sum': 'La suma que lo sostiene, t',
  'bag-reach-case': 'Cómo',
  'bag-reach-total': 'Todos los big bags',
  'bag-reach-bags': 'Big bags volcados',
  'bag-reach-mean': 'Un big bag de media',
  'bag-reach-worst': 'El peor big bag',
  'bag-reach-as-is': 'Como consta',
  'bag-reach-had-empties': 'Con {empties} {empties?vaciado|vaciados} más',
  'bag-reach-how':
    'Un paquete que puede contener varios big bags cuenta para cada uno; por eso juntos llegan a más de lo envasado. Se toman los mismos big bags y paquetes en el mismo orden: en cada vaciado el volcado espera a que lo que hay dentro se haya envasado. El tiempo que costaría no se cuenta.',
  'bag-reach-worst-bags': 'Los big bags que llegaron más lejos',
  'bag-reach-bag': 'Big bag',
  'bag-reach-tonnes': 'Puede estar en, t',
  'bag-reach-if-bad': 'Si este big bag estuviera mal',
  'bag-reach-nowhere': 'Nada de él puede estar en ningún paquete.',
  'bag-reach-possible': 'Paquetes que pueden contener algo de él',
  'bag-reach-lots': 'Lotes',
  'bag-reach-pallets': 'Palés',
  'bag-reach-customers': 'Clientes',
  'bag-reach-lot-codes': 'Lotes:',
  'bag-reach-whole-lots': 'Retirados enteros, estos lotes son {packs} {packs?paquete|paquetes} o {tonnes} t.',
  'bag-reach-where':
    '{packs} {packs?paquete puede|paquetes pueden} contener algo de él. De los palés, {here} aquí, {loaded} en un vehículo y {away} fuera.',
  'bag-reach-customer': '{customer}: {pallets} {pallets?palé|palés}, {packs} {packs?paquete|paquetes} ({deliveries})',
  'desk-to-reach': 'Hasta dónde llega un big bag',
});
