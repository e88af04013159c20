import { addSentences } from '../platform/sentences/sentences.js';

/** Contar, cerrar, salir, cambiar lo previsto y lo que vuelve. */
addSentences('es', {
  'returned-unit': 'unidad devuelta',
  'delivery-has-left':
    'El pedido {order} salió con el albarán {note}. Ya no se cambia; lo que vuelva se registra como devolución.',
  'blind-count-missing':
    'Nadie ha contado las unidades del pedido {order} desde la última carga o descarga. Dar la vuelta al vehículo, contar y anotar el recuento.',
  'blind-count-differs':
    'El recuento a pie ({counted}) no es lo escaneado. Dar otra vuelta y contar de nuevo sin mirar la pantalla.',
  'blind-count-differs-again':
    'Contadas {counted} por segunda vez, escaneadas {scanned}. Comparar unidad por unidad con la lista: descargar con el escáner lo que no está, escanear lo que faltaba y contar otra vez.',
  'short-words-needed': 'Decir con palabras por qué va menos de lo pedido: el motivo «otro» solo no dice nada.',
  'units-may-not-go':
    '{count} {count?unidad no puede|unidades no pueden} ir: {units}. {count?Descargarla con el escáner y devolverla|Descargarlas con el escáner y devolverlas} a su sitio. La primera: {because}',
  'units-may-not-leave':
    '{count} {count?unidad no puede|unidades no pueden} salir: {units}. Parar el vehículo en la puerta. Anular el albarán, {count?descargarla|descargarlas}, contar e imprimir de nuevo. La primera: {because}',
  'papers-not-printed':
    'Los papeles del pedido {order} aún no están impresos. Cerrar primero la entrega y después dejar salir el vehículo.',
  'left-before-closing':
    'Los papeles del pedido {order} se imprimieron el {closedAt}, después de la hora indicada. Corregir la hora.',
  'less-than-is-on':
    'Ya hay {on} de {goods} en el vehículo y se pedirían {ordered}. Descargar antes lo que sobra o pedir al menos lo cargado.',
  'units-came-back':
    'Desde entonces han vuelto unidades del pedido {order}: el vehículo sí salió. Emitir una versión nueva.',
  'left-with-unfit-units':
    'El vehículo del pedido {order} salió con unidades que debían quedarse: {units}. Llamar al cliente y decir qué hacer con ellas.',
  'not-left-yet':
    'El vehículo del pedido {order} no ha salido. Descargar con el escáner; la devolución es para lo que tuvo el cliente.',
  'returned-before-leaving':
    'El vehículo del pedido {order} salió el {leftAt}, después de la hora indicada. Corregir la hora.',
  'return-words-needed': 'Decir con palabras por qué vuelve: el motivo «otro» solo no dice nada.',
  'returned-unit-unclear':
    'Una sola cosa por fila: un palé entero, un big bag entero o un lote con el número de paquetes sueltos.',
  'came-back-already': '{unit} ya volvió o no está en casa del cliente. Buscarlo antes de seguir.',
  'lot-not-delivered':
    'Ningún paquete del lote {lot} fue con el pedido {order}. Leer el código otra vez o buscar su entrega.',
  'more-than-delivered':
    'Del lote {lot} {back?volvería|volverían} {back} {back?paquete|paquetes} y solo {delivered?se entregó|se entregaron} {delivered}. Contar otra vez o mirar lo que volvió antes.',
  'credit-over-returned':
    '{credited?Abonado|Abonados} {credited} de {unit}, y {count?vuelve|vuelven} {count}. No abonar más.',
  'same-unit-twice': '{unit} está en dos filas. Ponerlo en una.',
  'return-waits':
    'Han vuelto unidades del pedido {order} y están apartadas. Examinarlas y decidir: a existencias o destruir.',
  'return-decided': 'Sobre {unit} ya se decidió. Abrir de nuevo la devolución y mirar.',
  'loose-packs-stay-out':
    'Los paquetes sueltos del lote {lot} no vuelven a existencias: nadie sabe dónde han estado. Mandarlos destruir.',
  'bag-came-back':
    'El big bag {bag} volvió de un cliente y está apartado. Calidad debe decidir antes de usarlo; tomar otro.',
  'bag-was-destroyed': 'El big bag {bag} fue destruido. Leer otra vez su número.',
  'short-not-enough-stock': 'no hay existencias suficientes',
  'short-on-hold': 'se retuvo un palé',
  'short-damaged': 'una unidad está dañada',
  'short-no-room': 'no queda sitio en el vehículo',
  'short-too-heavy': 'el vehículo pesaría demasiado',
  'short-customer-wants-less': 'el cliente quiere menos',
  'short-other': 'otro, con palabras',
  'return-refused-by-customer': 'rechazado por el cliente',
  'return-damaged-on-the-way': 'dañado en el camino',
  'return-wrong-goods': 'mercancía equivocada',
  'return-too-much': 'más de lo pedido',
  'return-complaint': 'tras una reclamación',
  'return-recalled': 'reclamado por nosotros',
  'return-other': 'otro, con palabras',
  'fate-restock': 'a existencias',
  'fate-destroy': 'destruido',
  'paper-copy': 'COPIA',
  'paper-copy-note': '{word}, impresa {at} UTC; primera impresión SHA-256 {hash}',
  'pallet-is-returned': 'devuelto, espera a calidad',
  'pallet-is-destroyed': 'destruido',
  'bag-status-returned': 'devuelto, espera a calidad',
  'bag-status-destroyed': 'destruido',
});
