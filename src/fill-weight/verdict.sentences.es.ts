import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'fill-verdict-kept': 'se cumple',
  'fill-verdict-broken': 'no se cumple',
  'fill-verdict-not-judged': 'sin juzgar',
  'fill-verdict-second-sample-needed': 'hace falta una segunda muestra',
  'fill-verdict-accepted': 'aceptado',
  'fill-verdict-rejected': 'rechazado',
  'fill-rule-mean': 'Media',
  'fill-rule-beyondT1': 'Paquetes por debajo de T1',
  'fill-rule-beyondT2': 'Paquetes por debajo de T2',
  'fill-rule-beyondMav': 'Paquetes por debajo de la variación máxima admisible',
  'fill-mean-within':
    'De media, {packs} {packs?paquete contiene|paquetes contienen} {grams} g más que la cantidad nominal.',
  'fill-mean-just-within':
    'De media, {packs} {packs?paquete contiene|paquetes contienen} la cantidad nominal y menos de 0.01 g más.',
  'fill-mean-at-the-limit':
    'De media, {packs} {packs?paquete contiene|paquetes contienen} exactamente la cantidad nominal, y eso basta.',
  'fill-mean-outside':
    'De media, {packs} {packs?paquete contiene|paquetes contienen} {grams} g menos que la cantidad nominal.',
  'fill-mean-sample-within':
    'La media de {packs} {packs?paquete|paquetes} es de {grams} g frente a la cantidad nominal, y pasa hasta −{allowance} g.',
  'fill-mean-sample-at-the-limit':
    'La media de {packs} {packs?paquete|paquetes} es de {grams} g frente a la cantidad nominal, y pasa justo hasta −{allowance} g.',
  'fill-mean-sample-outside':
    'La media de {packs} {packs?paquete|paquetes} es de {grams} g frente a la cantidad nominal, y solo pasa hasta −{allowance} g.',
  'fill-mean-rests-on-shortest':
    'Pasa solo porque a un paquete le falta tanto que ensancha el margen. Tomar ese paquete por lo que es, y no la media por buena.',
  'fill-count-within': '{count} de {packs} {count?está|están} por debajo de {limit} g; se admiten hasta {allowed}.',
  'fill-count-none': 'Ninguno de {packs} está por debajo de {limit} g.',
  'fill-count-at-the-limit': '{count} de {packs} {count?está|están} por debajo de {limit} g, justo los que se admiten.',
  'fill-count-outside': '{count} de {packs} {count?está|están} por debajo de {limit} g; solo se admiten {allowed}.',
  'fill-count-outside-none': '{count} de {packs} {count?está|están} por debajo de {limit} g; no se admite ninguno.',
  'fill-count-between':
    '{count} de {packs} {count?está|están} por debajo de {limit} g: demasiados para aceptar, pocos para rechazar. Sacar al azar {next} más de la misma partida y pesarlos.',
  'fill-share': 'Se admite el {percent} %.',
  'fill-nothing-weighed': 'No se pesó ningún paquete.',
  'fill-bounds-kept':
    'Al menos {least} y como mucho {most} de {packs} están por debajo de {limit} g; se admiten {allowed}.',
  'fill-bounds-broken':
    'Al menos {least} y como mucho {most} de {packs} están por debajo de {limit} g; se admiten {allowed}.',
  'fill-bounds-not-judged':
    'Al menos {least} y como mucho {most} de {packs} están por debajo de {limit} g, y se admiten {allowed}. Contarlos peso por peso para saberlo.',
  'fill-table-not-obtained':
    'No se disponía de la tabla que dice cuánto puede faltarle a un paquete, así que no se pueden contar.',
  'fill-sample-size':
    '{packs?Se pesó|Se pesaron} {packs}, y esta prueba necesita {asked}. Sacar y pesar de nuevo la muestra completa.',
  'fill-do-broken':
    'Apartar lo envasado desde el último control bueno y preguntar a calidad. La ley del país decide qué puede hacerse con ello.',
  'fill-source': '{title}, {clause}',
  'fill-evidence-memory': 'Anotado de memoria: leerlo en el texto vigente antes de fiarse.',
  'fill-evidence-computed': 'Calculado con la fórmula del texto, no leído en su tabla.',
  'fill-evidence-own-reading': 'Lectura propia: el texto no da ninguna cifra para esto.',
  'fill-edition': '{title}, edición {edition}',
  'fill-edition-not-noted': '{title}, edición sin anotar',
  'fill-outside-below-scope':
    'Por debajo de {grams} g no se aplica aquí ninguna regla sobre medias. Puede aplicarse otra ley del país.',
  'fill-outside-above-scope':
    'Por encima de {grams} g no se aplica aquí ninguna regla sobre medias. Puede aplicarse otra ley del país.',
  'fill-outside-bulk-bag':
    'Un big bag de {grams} g o más se pesa por sí solo y se vende por ese peso. No se aplica ninguna regla sobre medias.',
  'fill-law-caution':
    'Las reglas sobre el peso de llenado difieren de un país a otro y cambian. Cuenta el texto vigente donde se venden los paquetes.',
});
