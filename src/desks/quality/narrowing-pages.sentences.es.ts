import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'narrow-title': 'Reducir la retención {hold}',
  'narrow-says':
    'La retención está sobre: {subject}. Elegir lo que puede sacarse de su alcance. Lo elegido se mira antes de firmar.',
  'narrow-bags': 'Big bags que retiene',
  'narrow-lots': 'Lotes enteros, hasta donde están contados',
  'narrow-minutes': 'Minutos de una corrida',
  'narrow-minutes-says':
    'Solo se sacan los paquetes que, según los recuentos, se envasaron con seguridad entre las dos horas.',
  'narrow-run': 'Corrida',
  'narrow-fromAt': 'Desde (hora de la planta)',
  'narrow-untilAt': 'Hasta (hora de la planta)',
  'narrow-pallets': 'Palés que alcanza',
  'narrow-status': 'Estado',
  'narrow-look': 'Mirar lo que esto libera',
  'narrow-back': 'Volver a la retención',
  'narrow-anew': 'Elegir de nuevo',
  'narrow-frees': 'Lo que libera',
  'narrow-frees-says':
    'Libera {pallets} {pallets?palé|palés} con {packs} {packs?paquete|paquetes} y {bags} {bags?big bag|big bags}. {left?Sigue retenido|Siguen retenidos} {left} {left?palé|palés} con {leftPacks} {leftPacks?paquete|paquetes} y {leftBags} {leftBags?big bag|big bags}.',
  'narrow-stays': 'Lo que sigue retenido',
  'narrow-sign': 'Firmar',
  'narrow-sign-says':
    'Lo que libera puede seguir desde ese momento, salvo que otra retención o una decisión lo pare. Vale para lo que hoy está registrado: lo que llegue después a estas partes queda retenido otra vez.',
  'narrow-reason': 'Por qué puede reducirse',
  'narrow-assessment': 'Evaluación: por qué estas partes no pueden hacer daño',
  'narrow-assessment-optional': 'Evaluación (sin ella deja de valer si esto pasa a ser una retención de seguridad)',
  'narrow-assessment-hint': 'Qué se miró, quién, cuánto, y qué se encontró. Se firma abajo.',
  'narrow-act': 'Firmar y reducir la retención',
  'narrow-open': 'Sacar algo de ella',
  'narrowings-head': 'Lo que se sacó de ella',
  'narrowings-none': 'No se sacó nada de su alcance.',
  'narrowings-says': 'Estas partes están fuera de la retención mientras no les llegue nada de lo que ella trata.',
  'narrowing-by': 'Firmado por {by}, {at}:',
  'narrowing-by-nobody': 'nadie conocido por su nombre',
  'narrowing-assessed': 'Evaluación: {assessment}',
  'narrowing-without-assessment':
    'No lleva evaluación y por eso no vale mientras esta sea una retención de seguridad: todas estas partes están retenidas.',
  'narrowing-minutes': '{unit}, desde {from} hasta {until}',
  'widen-head': 'Anular esta reducción',
  'widen-reason': 'Por qué',
  'widen-act': 'Anularla',
  'said-narrowed': 'La retención {hold} está reducida: {count?se sacó|se sacaron} {count} {count?parte|partes}.',
  'said-widened': 'La reducción está anulada. La retención alcanza otra vez estas partes.',
  'reach-again': 'retenido otra vez: le llegó algo después de sacarlo',
  'reach-out-head': 'Sacado de la retención',
  'reach-bags': 'Big bags: {count}',
  'reach-at-returned':
    '{count?Devuelto|Devueltos} por clientes: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'reach-at-destroyed': '{count?Destruido|Destruidos}: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'at-dispatched': 'En poder de clientes: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'at-loaded': 'En un vehículo: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'at-in-store': 'En el almacén: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'at-returned':
    '{count?Devuelto|Devueltos} por clientes: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'at-destroyed': '{count?Destruido|Destruidos}: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'at-taken-apart': '{count?Deshecho|Deshechos}: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'out-dispatched':
    '{count?Sacado|Sacados}, en poder de clientes: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'out-loaded': '{count?Sacado|Sacados}, en un vehículo: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'out-in-store': '{count?Sacado|Sacados}, en el almacén: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'out-returned':
    '{count?Sacado|Sacados}, {count?devuelto|devueltos} por clientes: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'out-destroyed':
    '{count?Sacado|Sacados}, {count?destruido|destruidos}: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'out-taken-apart':
    '{count?Sacado|Sacados}, {count?deshecho|deshechos}: {count} {count?palé|palés}, {packs} {packs?paquete|paquetes}',
  'field-name-narrow-reason': 'Motivo para reducirla',
  'field-name-assessment': 'Evaluación',
  'field-name-pallet-ids': 'Palés',
  'field-name-lot-ids': 'Lotes',
  'field-name-narrowing': 'Reducción',
  'field-name-widen-reason': 'Motivo para anularla',
});
