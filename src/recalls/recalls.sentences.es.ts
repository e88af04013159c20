import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  recall: 'retirada',
  'recall-answer': 'respuesta de un cliente',
  'recall-scope-empty':
    'Nada entra en esta retirada: ni big bag ni paquete. No se ha abierto nada. Comprobar el código y la hora, o elegir otra cosa.',
  'recall-time-not-usable':
    'El tiempo debe empezar antes de acabar: {fromAt} a {untilAt}. Indicar cuándo empezó y cuándo acabó.',
  'recall-safety-covers-possible':
    'Una retirada por seguridad cubre todo lo posible. Dejarla en posible, o elegir calidad si nadie puede sufrir daño.',
  'recall-likely-needs-reason':
    'Solo se va a retirar lo seguro y lo probable. Escribir por qué puede quedarse el resto, o retirar todo lo posible.',
  'recall-signed': 'La retirada {recall} está firmada. Se puede leer; abrir otra para lo que vino después.',
  'recall-marked-already': 'Esto ya consta en la retirada {recall}: {mark:recall-mark}. Seguir con el paso siguiente.',
  'recall-nothing-has-no-amount':
    'El cliente aún no lo sabe, así que no hay cantidad. Dejarla vacía, o elegir qué fue de los paquetes.',
  'exercise-places-no-hold':
    '{recall} es un simulacro y no bloquea nada. Si hay peligro, abrir una retirada o poner una retención.',
  'recall-held-already': 'Todo lo que cubre la retirada {recall} ya está retenido. Seguir con los clientes.',
  'recall-clock-running': 'El reloj de {recall} sigue en marcha. Pararlo primero y luego firmar.',
  'recall-needs-explanation':
    '{recall} no cuadra: {packs?falta|faltan} {packs} {packs?paquete|paquetes} por justificar, o las respuestas contradicen lo enviado. Buscar los registros, o escribir qué lo explica, y luego firmar.',
  'recall-mark-customers-listed': 'lista de clientes lista',
  'recall-mark-stock-blocked': 'existencias bloqueadas',
  'recall-mark-clock-stopped': 'reloj parado',
  'recall-report-recall': 'Informe de retirada',
  'recall-report-exercise': 'Informe de un simulacro de retirada',
  'recall-report-is-exercise': 'SIMULACRO – no se retira mercancía',
  'recall-report-answer':
    '{scope}: {packs} paquetes con {kilograms} kg de azúcar. {dispatched} paquetes fueron a clientes ({customers}), {held} se pueden bloquear aquí, {unaccounted} están sin justificar. Llevó {minutes} min.',
  'recall-report-says':
    '{scope}: {packs} {packs?paquete|paquetes} con {kilograms} kg de azúcar. {dispatched} {dispatched?paquete fue|paquetes fueron} a clientes ({customers}), {held} se {held?puede|pueden} bloquear aquí, {unaccounted} {unaccounted?está|están} sin justificar. Llevó {minutes} min.',
  'recall-report-left-out':
    'Se dibujan los {drawn} periodos de tolva por los que pasó la mayor parte. {count} más {count?queda|quedan} sin dibujo: sus big bags están en la tabla de big bags y en el archivo CSV de todos los enlaces, con todos sus kilogramos.',
  'recall-report-scope': 'Alcance y reloj',
  'recall-report-safety': 'Por seguridad: {reason}',
  'recall-report-quality': 'Por calidad: {reason}',
  'recall-report-possible':
    'Cubre todo lo posible: cada paquete que los registros no descartan, fluyera como fluyera la tolva.',
  'recall-report-likely': 'Cubre solo lo seguro y lo probable. Por qué puede quedarse el resto: {reason}',
  'recall-report-not-stated': 'sin indicar',
  'recall-report-clock':
    'Reloj en marcha {started} por {by}; primera lista de clientes {listed}; existencias bloqueadas {blocked}; reloj parado {stopped}.',
  'recall-report-balance': 'Balance en paquetes y kilos',
  'recall-report-sums': 'Lo producido y dónde está',
  'recall-report-no-share': '–',
  'recall-report-shares':
    'Justificado {accounted} % de lo producido. Recuperado (devuelto o destruido en el cliente) {recovered} % de lo expedido. Cerrado (esto y lo vendido confirmado) {closed} % de lo expedido. En paquetes.',
  'recall-report-over': 'El azúcar retirado es {factor} veces el de los big bags en cuestión.',
  'recall-report-assumed': 'Algunos paquetes no se pesaron nunca: vale por ellos su cantidad nominal.',
  'recall-report-explained': 'Lo que no cuadra, en palabras de quien firma: {words}',
  'recall-report-where': 'Dónde está ahora',
  'recall-report-customers': 'Clientes a los que avisar',
  'recall-report-bags': 'Big bags que puede contener',
  'recall-report-events': 'Paradas, rechazos, muestras y lotes de envase entretanto',
  'recall-report-corrections': 'Correcciones y entradas tardías que lo tocan',
  'recall-report-records': 'Registros que van en el expediente',
  'recall-report-none': 'Ninguno.',
  'recall-report-sign': 'Firma',
  'recall-report-signed': 'Firmado por {who}, {at}.',
  'recall-report-hashes': 'Contenido {content}; cabeza del diario {head}.',
  'recall-report-law':
    'A quién avisar, cómo y en qué plazo lo fijan la ley del país y los contratos con los clientes: seguir las normas locales.',
  'recall-report-as-at': 'datos a {at} · {hash}',
  'recall-part-inStore': 'En almacén',
  'recall-part-onDock': 'En el muelle',
  'recall-part-onVehicle': 'En un vehículo que no ha salido',
  'recall-part-dispatched': 'Expedido (con lo devuelto desde entonces)',
  'recall-part-rejects': 'Gastado: rechazos',
  'recall-part-samples': 'Gastado: muestras',
  'recall-part-retained': 'Gastado: muestras guardadas',
  'recall-part-scrapped': 'Gastado: barreduras y desecho',
  'recall-part-unaccounted': 'Sin justificar (la diferencia)',
  'recall-part-produced': 'Producido',
  'recall-bar-produced': 'producido',
  'recall-bar-held': 'retenible aquí',
  'recall-bar-dispatched': 'expedido',
  'recall-bar-used-up': 'gastado',
  'recall-bar-unaccounted': 'sin justificar',
  'recall-place-in-store': 'en almacén',
  'recall-place-on-dock': 'en el muelle',
  'recall-place-on-vehicle': 'en un vehículo',
  'recall-place-dispatched': 'salido',
});
