import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  pallet: 'palé',
  'run-or-ranges': 'Indicar una corrida para los paquetes que siguen, o una lista de tramos, no las dos cosas.',
  'range-without-packs':
    'De {fromCount} a {toCount} de la corrida {run} no hay ningún paquete. El final tiene que estar después del comienzo.',
  'range-beyond-count':
    'La corrida {run} tiene {packCount} {packCount?paquete|paquetes} hasta ahora; de {fromCount} a {toCount} queda más allá. Leer antes el contador y contar los paquetes, o corregir el tramo.',
  'nothing-to-palletise':
    'La corrida {run} tiene {packCount} {packCount?paquete|paquetes}, y todos están ya en palés. Para paquetes que vuelven a estar sueltos, indicar su tramo.',
  'ranges-overlap': 'El tramo de {fromCount} a {toCount} se nombra dos veces. Nombrar cada paquete una vez.',
  'packs-on-another-pallet':
    'Los paquetes {fromCount} a {toCount} ya están en el palé {pallet}. Indicar el tramo de otros paquetes, o deshacer antes ese palé.',
  'mixed-formats':
    'Un palé lleva un solo formato; estos paquetes son de otros ({formats}). Hacer un palé para cada formato.',
  'pallet-over-full':
    '{packCount} {packCount?paquete es|paquetes son} más de los que lleva un palé de {format} ({packsPerPallet}). Hacer dos palés, o corregir el recuento.',
  'lot-unknown':
    'Nadie ha registrado el código impreso de los paquetes {fromCount} a {toCount} de la corrida {run}. Registrar antes el código, y después hacer el palé.',
  'built-before-run':
    'La corrida {run} empezó el {startedAt}, después de la hora indicada. Corregir la hora o la corrida.',
  'pallet-not-in-store':
    'El palé {pallet} no está en almacén ({status:pallet-is}). Buscarlo: solo un palé en almacén se puede cambiar o cargar.',
  'before-it-was-built': 'El palé {pallet} se hizo el {builtAt}, después de la hora indicada. Corregir la hora.',
  'parts-not-the-whole':
    'Las partes no suman el palé {pallet} con sus {packCount} {packCount?paquete|paquetes} (diferencia: {left}). Contar otra vez, lote por lote.',
  'lot-not-on-pallet': 'En el palé {pallet} no hay paquetes del lote {lot}. Leer otra vez el código de los paquetes.',
  'which-lot':
    'El palé {pallet} lleva paquetes de varios lotes. Decir de cada parte cuántos paquetes de qué lote lleva.',
  'same-pallet-twice': 'El palé {pallet} se nombra dos veces. Nombrar cada palé una vez.',
  'pallet-has-history':
    'El palé {pallet} salió de otro, se convirtió en otros, o estuvo en un vehículo. Corregir antes esos registros, empezando por el último.',
  'pallet-label-title': 'Etiqueta de palé',
  'label-full': 'palé completo',
  'label-part': 'PALÉ PARCIAL',
  'label-net': 'NETO (recuento × nominal)',
  'label-gross': 'BRUTO (calculado)',
  'label-best-before': 'consumo preferente',
  'label-count': 'CANTIDAD / COUNT',
  'label-content': 'CONTENIDO / CONTENT (GTIN)',
  'label-lot': 'LOTE / BATCH',
  'label-lots': 'LOTES / LOTS',
  'label-best-before-title': 'CONSUMO PREF. / BEST BEFORE',
  'label-more-lots': 'y {count} lotes más: ver el albarán',
  'pallet-taken-apart': 'El palé {pallet} se deshizo. Buscar en qué se convirtieron sus paquetes.',
  'pallet-waiting': 'Calidad ha dicho que el palé espera una decisión.',
  'pallet-released': 'Calidad ha liberado el palé.',
  'pallet-rejected': 'Calidad ha rechazado el palé: {reason}',
  'pallet-concession': 'Calidad ha aceptado el palé por concesión: {reason}',
  'lot-waiting': 'El lote {lot} espera la decisión de calidad.',
  'lot-released': 'El lote {lot} está liberado.',
  'lot-rejected': 'El lote {lot} está rechazado: {reason}',
  'lot-concession': 'El lote {lot} está aceptado por concesión: {reason}',
  'possible-bag-waiting': 'El big bag {bag}, que puede estar en él, espera la decisión de calidad.',
  'possible-bag-rejected': 'El big bag {bag}, que puede estar en él, está rechazado: {reason}',
  'possible-bag-concession': 'El big bag {bag}, que puede estar en él, está aceptado por concesión: {reason}',
  'bag-result-outside':
    'Un resultado del big bag {bag}, que puede estar en él, está fuera de la especificación. Tiene que decidir calidad.',
  'held-by': 'Retenido ({hold} sobre {kind:scope} {on}, {hazard:hazard}): {reason}',
  'held-again-by':
    'Retenido otra vez ({hold} sobre {kind:scope} {on}, {hazard:hazard}): se había sacado de la retención, pero desde entonces le llegó algo de lo que ella trata. {reason}',
  'taken-out-of': 'Calidad lo sacó de la retención {hold} sobre {kind:scope} {on}; ella trata de: {reason}',
  'perhaps-held-by':
    'No lo cubre la retención de calidad {hold} sobre {kind:scope} {on}, pero puede llevar algo de lo que ella trata: {reason}',
  'no-bag-known': 'Nadie sabe de qué big bags vino su azúcar. Registrar lo que se volcó en la tolva.',
  'packs-beyond-count':
    'Se dice que lleva paquetes de la corrida {run} hasta {toCount}, pero solo {packCount?se contó|se contaron} {packCount}. Contar sus paquetes, y corregir después el recuento o el palé.',
  'pallets-title': 'Palés',
  'pallets-says': 'Del más reciente al más antiguo. La situación de un palé ante calidad se calcula al abrirlo.',
  'pallets-caption': 'Palés y dónde están',
  'pallets-format': 'Formato',
  'pallets-packs': 'Paquetes',
  'pallets-part': 'parcial',
  'pallets-where': 'Dónde',
  'pallets-built': 'Hecho',
  'pallet-is-in-store': 'en almacén',
  'pallet-is-loaded': 'en un vehículo',
  'pallet-is-dispatched': 'expedido',
  'pallet-is-taken-apart': 'deshecho',
  'pallet-title': 'Palé {sscc}',
  'pallet-net': 'Neto, recuento × nominal',
  'pallet-gross': 'Bruto, calculado',
  'pallet-to-thread': 'Su hilo: de dónde vino, adónde más fue',
  'pallet-no-reasons': 'No hay nada en contra.',
  'pallet-why': 'Por qué',
  'pallet-contents': 'Contenido, por lote',
  'pallet-lot': 'Lote',
  'pallet-run': 'Corrida',
  'pallet-range': 'Paquetes de la corrida, de – a',
  'pallet-history': 'De qué salió y en qué se convirtió',
  'descent-split': 'se dividió; una parte pasó a ser',
  'descent-restacked': 'se reapiló como',
  'descent-relabelled': 'se reetiquetó como',
  'descent-merged': 'pasó a formar parte de',
  'pallet-bags': 'Big bags cuyo azúcar puede estar en él, kg',
  'pallet-bag': 'Big bag',
  'pallet-least': 'Mínimo',
  'pallet-likely': 'Probable',
  'pallet-most': 'Máximo',
  'pallet-word': 'Con qué certeza',
  'caution-pallets':
    'Los palés apilados y las carretillas en marcha pueden matar. No ponerse bajo cargas elevadas, ir por los pasos de peatones, levantar a mano solo lo permitido. Deciden las reglas locales de apilado, carretillas y elevación y las personas habilitadas, no esta página.',
});
