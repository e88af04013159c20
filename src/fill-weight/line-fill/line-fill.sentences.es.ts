import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'line-fill-title': 'Llenado de {line}: ajuste y exceso entregado',
  'line-fill-link': 'Ajuste y exceso entregado de {line}',
  'line-fill-back': 'A la planta',
  'line-fill-no-runs': 'Esta línea no ha tenido corridas en los últimos 90 días; no se aconseja nada.',
  'line-fill-period': 'Corridas desde {from}: {days} días.',
  'line-fill-caution':
    'La inspección juzga según la ley del país donde se venden los paquetes y con sus propias muestras. El consejo supone que los pesos se reparten como una campana; aquí nada muestra que sea así.',
  'line-fill-reckon-with': 'Calcular con otras cifras',
  'line-fill-reckon': 'Calcular',
  'line-fill-price-hint': 'Vacío: no se habla de dinero.',
  'line-fill-tare-hint': 'Cuánto más pueden pesar los envases vacíos que la tara tomada. Vacío: 0.',
  'line-fill-step-hint': 'Su menor ajuste posible. Vacío: un escalón de la pantalla de la pesadora.',
  'line-fill-set-by-hint': 'Cada vez que se ajusta la línea. Vacío: se pesan todos.',
  'line-fill-risk-hint': 'En cuántos lotes de cada cien el azar puede romper una regla. Vacío: 5, valor propio.',
  'field-name-price-per-kilogram': 'Precio del kilogramo',
  'field-name-tare-limit-grams': 'Límite de la tara',
  'field-name-filler-step-grams': 'Paso de la llenadora',
  'field-name-set-by-pack-count': 'Paquetes pesados para ajustar la línea',
  'field-name-risk-percent': 'Riesgo por lote',
  'line-fill-sum': 'De qué se compone el ajuste de {format}',
  'line-fill-by-rules': '{place}: según {law}.',
  'line-fill-scale':
    'El límite del error de la báscula es el de la pesadora {weighers}, {grams} g, según su ficha. Redondeado hacia arriba a {step} g.',
  'line-fill-no-tare':
    'No se ha indicado límite de la tara: a cada paquete le faltaría lo que la tara tuviera de menos.',
  'line-fill-drift-says':
    'Si la línea se ajustó de otro modo entre estos lotes, eso cuenta como deriva y sube el consejo.',
  'line-fill-drift-by-settings':
    'La deriva es cuánto se separan {lots} {lots?lote|lotes} respecto de la consigna registrada para cada uno; los cambios de ajuste no cuentan en ella.',
  'line-fill-setting': 'Ajuste actual, según el último registro: {what}. La consigna desde {at}: {why}',
  'line-fill-no-setpoint':
    'Ajuste actual, según el último registro: {what}. La consigna de la llenadora nadie la registró.',
  'line-fill-no-setting': 'Nadie registró a qué está ajustada la línea para este formato.',
  'line-fill-offset-above':
    'En {lots} {lots?lote|lotes} el neto medio quedó en promedio {offset} g por encima de la consigna (de {least} a {most} g). Para la media aconsejada de {mean} g, ajustar la llenadora a {figure} g. Con qué certeza se conoce esa distancia no entra en el riesgo: pesar paquetes tras ajustar.',
  'line-fill-offset-below':
    'En {lots} {lots?lote|lotes} el neto medio quedó en promedio {offset} g por debajo de la consigna (de {least} a {most} g). Para la media aconsejada de {mean} g, ajustar la llenadora a {figure} g. Con qué certeza se conoce esa distancia no entra en el riesgo: pesar paquetes tras ajustar.',
  'line-fill-offset-unknown':
    'No se sabe a qué distancia de la consigna queda el neto medio: hacen falta {least} {least?lote que cuente|lotes que cuenten} y cuya consigna se registró y no se tocó; hay {known}. Por eso {mean} g es un neto medio y no una cifra de la llenadora: pesar paquetes tras ajustar.',
  'line-fill-take-over': 'Tomar lo aconsejado: {grams} g',
  'line-fill-set-otherwise': 'Registrar otro ajuste',
  'line-fill-setpoint': 'Consigna (g)',
  'line-fill-markets-left-out':
    '{markets}: el formato se vende también allí, pero de esas reglas no se puede calcular un ajuste y no entran en este consejo; ver los veredictos de las corridas.',
  'line-fill-market-hint': 'Vacío: donde se vende cada formato, según la puesta en marcha.',
  'line-fill-currency-hint': 'Del precio de arriba, tres letras, como EUR. Vacío: los importes se muestran sin moneda.',
  'line-fill-price-set-up-hint': 'Vacío: el precio fijado para cada formato; si no lo hay, no se habla de dinero.',
  'line-fill-nothing-weighed':
    'Ninguna pesadora ha pesado una corrida cerrada de este formato; no se aconseja nada. Mirar si la línea tiene una y si envía.',
  'line-fill-few-lots':
    'Aún no se aconseja nada: hacen falta {least} corridas cerradas con al menos {packs} {packs?paquete pesado|paquetes pesados}, y la mitad de los contados, para ver cómo derivan los lotes; hay {used}. Pesar {count} {count?corrida|corridas} más.',
  'line-fill-outside': 'No se aconseja nada: {why}',
  'line-fill-other-rules':
    'No se aconseja nada: {law} no pide una media y proporciones por debajo de T1 y T2 en cifras de las que calcular un ajuste. Elegir otro mercado.',
  'line-fill-no-spread':
    'No se aconseja nada: todos los paquetes de un lote parecen pesar lo mismo, y ninguna línea hace eso. Mirar si la pesadora funciona.',
  'line-fill-present-mean': 'Media de estos lotes',
  'line-fill-sigma': 'Desviación típica dentro de los lotes',
  'line-fill-drift': 'Deriva entre lotes',
  'line-fill-given-away': 'Exceso entregado neto',
  'line-fill-kilograms-a-month': 'kg al mes',
  'line-fill-month':
    'Calculado con el periodo: {packs} {packs?paquete contado|paquetes contados} de este formato al día, o sea {month} en 30 días.',
  'line-fill-lots': 'Últimas corridas cerradas: {format}',
  'line-fill-no-closed': 'aún no hay ninguna cerrada',
  'line-fill-run': 'Corrida',
  'line-fill-started': 'Empezó',
  'line-fill-weighed': 'Pesados',
  'line-fill-counted': 'Contados',
  'line-fill-mean': 'Media (g)',
  'line-fill-spread': 'Desviación típica (g)',
  'line-fill-giveaway': 'Exceso entregado neto (kg)',
  'line-fill-used': 'Cuenta para el consejo',
  'line-fill-is-used': 'sí',
  'line-fill-left-out-not-weighed': 'no: sin pesar',
  'line-fill-left-out-few-packs': 'no: muy pocos pesados',
  'line-fill-left-out-mostly-unweighed': 'no: la mayoría sin pesar',
});
