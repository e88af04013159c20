import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  hopper: 'tolva',
  tip: 'volcado',
  'hopper-period': 'periodo de tolva',
  'rework-bin': 'contenedor de reproceso',
  'level-seen': 'nivel visto',
  'bag-already-tipped':
    'El big bag {bag} ya se volcó ({at}). Si queda algo dentro, terminar ese volcado con su peso; si aquí cuelga otro, leer otra vez su número.',
  'tip-who': '{tippedBy} lo volcó en {tippedInto} el {tippedAt}.',
  'tip-who-held': '{tippedBy} lo volcó en {tippedInto} el {tippedAt}; {heldBy} lo retuvo el {heldAt}.',
  'tip-who-unsaid': 'Su hilo dice quién lo volcó y cuándo.',
  'bag-tipped-since':
    'Según los registros, el big bag {bag} colgó sobre {tippedInto} desde el {openedAt} hasta el {offAt}, y esto es del {meantAt}. Corregir antes ese volcado si no es cierto, o dar la hora correcta.',
  'kept-why-bag-already-tipped':
    '{tippedBy} ya volcó el big bag {bag} en {tippedInto} el {at}, así que uno de los dos era otro big bag, o el mismo volcado se anotó dos veces.',
  'kept-why-bag-tipped-since':
    'Según los registros, el big bag {bag} colgó sobre {tippedInto} desde el {openedAt} hasta el {offAt} ({tippedBy}), así que era otro big bag, o una de las dos horas no es correcta.',
  'bag-loaded': 'El big bag {bag} está en un vehículo o ha salido. Leer otra vez su número, o corregir antes la carga.',
  'bag-rejected': 'PARAR: el big bag {bag} está rechazado. No volcarlo; devolverlo a su sitio y avisar a calidad.',
  'bag-on-hold':
    'PARAR: el big bag {bag} está retenido ({hold}: {reason}). No volcarlo; devolverlo a su sitio y avisar a calidad.',
  'grade-not-taken':
    'PARAR: el big bag {bag} es {grade}; la corrida {run} envasa {format}, que no lo admite. No volcarlo; devolverlo a su sitio.',
  'bag-waiting':
    'El big bag {bag} espera a calidad, y {grade} solo se vuelca una vez liberado. Tomar un big bag liberado.',
  'bag-has-bad-result':
    'Un resultado del big bag {bag} está fuera de su especificación ({property:measured}). Tomar otro big bag y avisar a calidad.',
  'too-much-at-risk':
    'Ya hay {bagCount?volcado|volcados} {bagCount} {bagCount?big bag que espera|big bags que esperan} resultados; calidad permite {mostWaitingBagCount} a la vez. Tomar un big bag liberado en lugar de {bag}, o esperar los resultados.',
  'bag-changed-meanwhile': 'Otra persona acaba de cambiar el big bag {bag}. Mirarlo otra vez.',
  'off-before-open':
    'El big bag no se puede haber retirado ({offAt}) antes de abrir su boca ({openedAt}). Corregir la hora.',
  'before-first-period':
    'Los registros de la tolva {hopper} empiezan el {startedAt}; {at} es anterior. Corregir la hora.',
  'tip-is-off': 'El volcado de {bag} ya terminó el {at}. Corregir ese registro si no es cierto.',
  'rest-of-unknown-bag':
    'No se sabe qué big bag era, así que no se puede pesar nada de vuelta. Decir antes qué big bag era.',
  'rest-above-content':
    'El big bag {bag} contenía {netGrams} g y no pueden quedar {restGrams} g. Leer otra vez la báscula, o comprobar el número del big bag.',
  'candidates-same': 'Todos estos son el mismo big bag ({bag}). Nombrar dos o más que puedan haber sido, o volcar ese.',
  'second-person-same': 'La segunda persona tiene que ser otra. Pedir a un compañero que mire y nombrarlo.',
  'tip-has-no-candidates': 'Se sabe qué big bag fue este volcado. Corregir el volcado si no es cierto.',
  'not-a-candidate': 'El big bag {bag} no se nombró entre los que puede haber sido. Corregir el volcado en su lugar.',
  'nothing-to-correct': 'Decir qué es lo correcto en el volcado de {tip}: otro big bag u otra hora.',
  'tip-hangs': 'El volcado de {tip} no ha terminado. Terminarlo en lugar de corregir su final.',
  'tip-has-no-bag': 'El volcado de {tip} no es de un big bag conocido, así que ningún otro puede ocupar su lugar.',
  'bag-went-on':
    'El big bag {bag} ya ha cambiado ({status:bag-status}): algo se hizo con él después de este volcado. Corregir antes eso.',
  'limits-out-of-order':
    'El límite inferior ({lowerGrams} g) está por encima del superior ({upperGrams} g). Corregirlos.',
  'flow-not-stopped':
    'En una tolva se mira solo con el flujo parado y el acceso asegurado según las reglas locales de bloqueo. No se ha registrado nada.',
  'already-proven-empty': 'El vacío de la tolva {hopper} se comprobó el {at}. No se ha registrado nada dos veces.',
  'bag-hangs':
    'El big bag {bag} cuelga sobre la tolva {hopper} desde {at}. Terminar antes su volcado, y después mirar en la tolva.',
  'empty-went-on':
    'El vacío de la tolva {hopper} se comprobó de nuevo el {at}. Corregir antes ese vaciado posterior y después este.',
  'period-on-hold':
    'La retención {hold} está sobre el periodo de la tolva {hopper} que este vaciado comenzó. Ponerla también sobre el periodo anterior, levantarla aquí y corregir después el vaciado.',
  'empty-as-it-was': 'Decir qué es lo correcto en el vaciado de la tolva {hopper}: otra hora u otro resto.',
  'bag-across-empty':
    'El big bag {bag} colgaba entonces sobre la tolva {hopper}: se abrió el {at}. Corregir antes su volcado o indicar otra hora.',
  'records-after-empty':
    'La tolva {hopper} no puede haber estado vacía entonces: {what:recorded} está registrado el {at}. Corregir esa hora o indicar una posterior.',
  'run-of-other-hopper': 'La corrida {run} no se alimenta de la tolva {hopper}. Quitar su recuento.',
  'empty-questioned':
    'Según los registros, a la tolva {hopper} le separan {kilograms} de eso. Buscar un volcado, un recuento o una salida que falte o no sea correcto; si está vacía a pesar de todo, enviarlo como ocurrido.',
  'content-never-rework': 'Nunca de vuelta al producto: {content:bin-content}. Registrarlo como desecho.',
  'bin-content-metal-rejects': 'rechazos por metal',
  'bin-content-floor-sweepings': 'barreduras del suelo',
  'bin-content-trade-returns': 'devoluciones del comercio',
  'bin-content-unknown-product': 'producto desconocido',
  'recorded-level': 'un nivel',
  'range-not-counted':
    'La corrida {run} tiene {packCount} {packCount?paquete|paquetes}; de {fromCount} a {toCount} no es parte de ellos. Corregir los recuentos.',
  'bin-heavier-than-its-packs':
    'El contenedor pesa {netGrams} g, pero los paquetes nombrados como su origen contienen como mucho unos {mostGrams} g. Pesarlo otra vez, o nombrar todos sus paquetes.',
  'bin-already-tipped': 'El contenedor de reproceso {bin} ya se volcó ({at}). Leer otra vez su número.',
  'bin-not-closed-then': 'El contenedor de reproceso {bin} se cerró el {closedAt}. Indicar una hora posterior.',
  'line-has-no-hopper':
    'La línea {line} no está unida a ninguna tolva a esa hora. Unirla antes en la configuración de la planta.',
  'hopper-holds-other-grade':
    'La tolva {hopper} puede contener todavía {bagCount} {bagCount?big bag|big bags} de un grado que {format} no admite ({bags}). Agotarla y comprobar antes que está vacía.',
  'happened-bag-rejected':
    'El big bag {bag} se volcó aunque está rechazado ({reason}). {=tipWho} Decidir qué se hace con todo aquello en lo que pueda estar.',
  'happened-bag-on-hold':
    'El big bag {bag} se volcó aunque está retenido ({hold}). {=tipWho} Decidir qué se hace con todo aquello en lo que pueda estar.',
  'happened-grade-not-taken':
    'El big bag {bag} ({grade}) se volcó mientras la corrida {run} envasaba {format}. {=tipWho} Decidir qué se hace con todo aquello en lo que pueda estar.',
  'happened-bag-waiting':
    'El big bag {bag} se volcó antes de liberarlo. {=tipWho} Decidir sobre él y sobre todo aquello en lo que pueda estar.',
  'happened-bag-has-bad-result':
    'El big bag {bag} se volcó aunque un resultado está fuera de su especificación ({property:measured}). {=tipWho} Decidir sobre todo aquello en lo que pueda estar.',
  'happened-too-much-at-risk':
    'El big bag {bag} se volcó a riesgo por encima del límite (ya esperaban {bagCount}). {=tipWho} Apurar sus resultados o retener aquello en lo que pueda estar.',
  'happened-empty-questioned':
    'Se comprobó el vacío de la tolva {hopper} aunque a los registros les separan {kilograms} de eso. Buscar lo que falta o no es correcto.',
  'happened-hopper-holds-other-grade':
    'Empezó una corrida de {format} cuando la tolva {hopper} podía contener {bagCount} {bagCount?big bag|big bags} de otro grado ({bags}). Decidir sobre sus primeros paquetes.',
  'tip-of-unread-bag':
    'Se volcó en {hopper} el {at} un big bag cuyo número no se pudo leer: uno de {bags}. Averiguar cuál era.',
  'run-down-questioned':
    'Se dijo que la tolva {hopper} se agotó el {at}, pero a los registros les separan {kilograms} de eso. Buscar lo que falta o no es correcto.',
  'hopper-level-impossible':
    'Los registros de la tolva {hopper} (periodo {period}) no pueden ser ciertos ({at:level-since}): el nivel estaba {kilograms} {what:finding}. La mejor explicación: {best:suspect}.',
  'level-since-the-start': 'el comienzo del periodo',
  'finding-below-zero': 'por debajo de cero',
  'finding-above-capacity': 'por encima de la capacidad',
  'finding-below-seen': 'por debajo de lo visto',
  'finding-above-seen': 'por encima de lo visto',
  'suspect-none': 'ninguna con un solo error',
  'suspect-not-named': 'un big bag que no se puede nombrar',
  'suspect-tip-late': 'el volcado de {bag:suspect} ({mass}) fue antes de lo registrado, a más tardar {by:level-since}',
  'suspect-tip-entered-twice': 'el volcado de {bag:suspect} ({mass}) se registró dos veces',
  'suspect-wrong-tare': 'una tara equivocada en {mass}, entre {after:level-since} y {by:level-since}',
  'suspect-tip-missing': 'falta un volcado de {mass} o más, entre {after:level-since} y {by:level-since}',
  'suspect-tip-too-many': 'un volcado de más de {mass} ({bag:suspect}), entre {after:level-since} y {by:level-since}',
  'suspect-wrong-hopper':
    'un volcado de {mass} ({bag:suspect}) se registró en una tolva y se vertió en otra, entre {after:level-since} y {by:level-since}',
  'suspect-empty-was-none':
    'el nivel o el vacío declarado antes no era cierto: quedaban dentro {mass} o más, entre {after:level-since} y {by:level-since}',
  'suspect-exits-missing':
    'faltan paquetes, rechazos o barreduras por {mass}, entre {after:level-since} y {by:level-since}',
  'suspect-exits-too-many': 'paquetes o rechazos de más por {mass}, entre {after:level-since} y {by:level-since}',
});
