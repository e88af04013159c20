import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'run-weights-title': 'Pesos de llenado de la corrida {number}',
  'run-weights-samples': 'Muestras a mano',
  'run-weights-back': 'Volver a la corrida {number}',
  'run-weights-kept': '{place}: {packs} {packs?paquete pesado cumple|paquetes pesados cumplen} todas las reglas.',
  'run-weights-broken':
    '{place}: {packs} {packs?paquete pesado no cumple|paquetes pesados no cumplen}: {rules}. Apartarlos y preguntar a calidad.',
  'run-weights-not-judged':
    '{place}: de {packs} {packs?paquete pesado|paquetes pesados} no se pudieron juzgar todas las reglas. Las líneas de abajo dicen por qué.',
  'run-weights-outside': '{place}: {why}',
  'run-weights-nothing':
    'Ningún paquete de esta corrida pasó por una pesadora de paquetes, así que no se juzga ninguna regla.',
  'run-weights-nothing-do':
    'Tomar paquetes de la línea al azar, pesarlos en una báscula comprobada y vigente, y anotarlos como muestra pesada a mano. Si la línea tiene pesadora de paquetes, mirar si está encendida y envía.',
  'run-weights-no-sample': 'Tampoco se pesó una muestra a mano: lo que contienen los paquetes es un supuesto.',
  'run-weights-sample':
    'La última muestra pesada a mano, {at}: {packs} {packs?paquete|paquetes}, de media {grams} g. Una muestra a mano no juzga la corrida; dice qué contienen los paquetes de media.',
  'run-weights-open': 'La corrida está abierta: así está hasta ahora.',
  'run-weights-counted': 'Paquetes contados',
  'run-weights-weighed': 'Paquetes pesados',
  'run-weights-unweighed': 'Sin pesar',
  'run-weights-rejected': 'Pesados y rechazados',
  'run-weights-uncounted':
    'Se {count?pesó|pesaron} {count} {count?paquete|paquetes} más de los contados. Mirar si el recuento va atrasado o si hubo paquetes que pasaron dos veces por la pesadora.',
  'run-weights-several':
    '{count} pesadoras pesaron paquetes de esta corrida. Si una está detrás de otra, aquí cada paquete cuenta dos veces.',
  'run-weights-inspector':
    'Lo que se dice aquí es una suma de los propios pesos: un inspector toma una muestra y decide.',
  'run-weights-rules': 'Reglas',
  'run-weights-rule': 'Regla',
  'run-weights-verdict': 'Veredicto',
  'run-weights-found': 'Hallado y admitido',
  'run-weights-source': 'Dónde consta',
  'run-weights-by-market': 'Los mismos paquetes según las reglas de cada mercado',
  'run-weights-market': 'Mercado',
  'run-weights-market-eu': 'Unión Europea',
  'run-weights-market-de': 'Alemania',
  'run-weights-market-uk': 'Reino Unido',
  'run-weights-market-us': 'Estados Unidos',
  'run-weights-market-ca': 'Canadá',
  'run-weights-market-oiml-country': 'Donde OIML R 87 es ley',
  'run-weights-giveaway': 'Exceso entregado',
  'run-weights-giveaway-all': 'De todos los paquetes pesados',
  'run-weights-giveaway-pack': 'Por paquete',
  'run-weights-deviation': 'Desviación típica',
  'run-weights-lightest': 'El más ligero',
  'run-weights-heaviest': 'El más pesado',
  'run-weights-giveaway-says':
    'Neto menos nominal de todos los paquetes pesados; se descuenta lo que falta a los paquetes cortos.',
  'run-weights-short-says':
    'Neto menos nominal de todos los paquetes pesados: por debajo de cero contienen menos de lo que dicen. Subir el ajuste y preguntar a calidad.',
  'run-weights-histogram': 'Pesos',
  'run-weights-limits-by': 'Límites y números permitidos según {law}.',
  'run-weights-no-limits':
    'Ninguna regla cuenta aquí paquetes de esta cantidad nominal por T1 y T2, así que no se dibujan límites.',
  'run-weights-beyond-bins':
    'El tramo extremo contiene también los paquetes que quedan más allá: el más ligero tiene {smallest} g, el más pesado {largest} g.',
  'run-weights-hours': 'Medias por hora',
  'run-weights-one-hour': 'Un gráfico de medias necesita paquetes de dos horas.',
  'run-weights-means-says':
    'Cada hora de UTC es una cifra. Los límites salen de los pasos entre horas, no de la ley: una señal pregunta qué cambió.',
  'run-weights-few-hours': 'Con {count} horas los propios límites son inciertos; lo usual son de 20 a 25.',
  'run-weights-stop': 'Parada: {reason}',
  'run-weights-tip': 'Vaciado: {number}',
  'run-weights-tare': 'Tara corregida desde aquí: {grams} g en cada neto',
  'run-weights-check-passed': 'Control superado: {station}',
  'run-weights-check-failed': 'Control no superado: {station}',
  'run-weights-control': 'Gráfico de control',
  'run-weights-spread': 'Cuánto distan entre sí los paquetes de un subgrupo',
  'run-weights-no-subgroups':
    'Un gráfico de control necesita dos subgrupos de paquetes seguidos. Mientras se guarden los pesos sueltos se dibuja aquí.',
  'run-weights-subgroup':
    'Un subgrupo son paquetes aceptados seguidos: los primeros {size} de cada {minutes} min; los rechazados se pasan por alto.',
  'run-weights-subgroup-heads': 'Así a cada uno de los {heads} cabezales le toca su turno.',
  'run-weights-limits-own':
    'Los límites de control (a trazos) salen de cuánto distan los paquetes de un subgrupo, en torno a la media de todos ellos. No son los de la ley: la línea gruesa es la cantidad nominal.',
  'run-weights-few-subgroups': 'Con {count} subgrupos los propios límites son inciertos; lo usual son de 20 a 25.',
  'run-weights-no-signal': 'Ninguna regla halla una señal: las medias varían como los paquetes de un subgrupo.',
  'run-weights-signal': '{at}: {rule}. Preguntar qué cambió.',
  'run-weights-more-signals': '{count} {count?señal anterior está|señales anteriores están} en la tabla.',
  'run-weights-sum-quiet': 'Suma acumulada (k {allowance}, h {decision}): ningún desplazamiento duradero.',
  'run-weights-sum-high':
    'Suma acumulada (k {allowance}, h {decision}): vista el {at}, la media es mayor desde hacia el {since}, cerca de {grams} g.',
  'run-weights-sum-low':
    'Suma acumulada (k {allowance}, h {decision}): vista el {at}, la media es menor desde hacia el {since}, cerca de {grams} g.',
  'run-weights-heads': 'Cabezales',
  'run-weights-heads-compared': 'Cada cabezal frente a los demás juntos',
  'run-weights-heads-alike': 'Ningún cabezal llena distinto de los demás.',
  'run-weights-heads-test':
    'Prueba t de Welch, con el riesgo de {percent} % repartido entre los cabezales (Bonferroni), apartados los que difieren; menos de un paso de la pesadora no se dice.',
  'run-weights-no-head':
    'De {count} {count?paquete|paquetes} la pesadora no dijo el cabezal: no {count?figura|figuran} en ninguna fila.',
  'run-weights-zero-or-no-head':
    '{count} {count?paquete se guardó|paquetes se guardaron} cuando aún no se distinguía el cabezal 0 de ninguno: nadie puede decir de cuál de los dos {count?es|son}, así que no {count?figura|figuran} en ninguna fila.',
  'run-weights-head': 'Cabezal',
  'run-weights-head-beyond': 'Por debajo de T1',
  'run-weights-head-share': 'Parte por debajo de T1',
  'run-weights-head-off': 'Frente a los demás (g)',
  'run-weights-head-less': 'El cabezal {head} llena {grams} g menos que los demás.',
  'run-weights-head-more': 'El cabezal {head} llena {grams} g más que los demás.',
  'run-weights-unreadable': 'Pesos que no se pueden leer',
  'run-weights-unreadable-says':
    'Las sumas de arriba los contienen. Los gráficos de pesos sueltos y los cabezales se hacen sin ellos.',
  'run-weights-block': 'Bloque',
  'run-weights-sequences': 'Números de secuencia',
  'run-weights-why': 'Por qué',
  'run-weights-damaged': 'Bloques dañados',
  'run-weights-dropped-says':
    '{count} {count?peso suelto se eliminó|pesos sueltos se eliminaron} tras su plazo, por orden.',
  'run-weights-damaged-says':
    '{count} {count?peso suelto está dañado|pesos sueltos están dañados}. Buscar una copia de seguridad anterior al daño.',
  'run-weights-more-blocks': '{count} {count?bloque dañado más no aparece|bloques dañados más no aparecen} aquí.',
  'weights-damage-too-short': 'menos bytes que cualquier bloque',
  'weights-damage-unknown-version': 'escrito por una edición posterior del formato',
  'weights-damage-wrong-checksum': 'no son los bytes que se escribieron',
  'weights-damage-runs-past-its-end': 'dice más de lo que contiene',
  'weights-damage-bytes-left-over': 'contiene bytes de los que nada habla',
  'weights-damage-impossible-value': 'contiene un valor imposible',
});
