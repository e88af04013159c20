import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'line-has-open-run':
    'La línea {line} ya tiene una corrida abierta ({run}). Cerrarla antes, y después empezar la siguiente.',
  'line-was-running':
    'La corrida {run} estuvo en esta línea hasta {closedAt}. Indicar un comienzo igual o posterior, o corregir el cierre de esa corrida.',
  'run-is-closed':
    'La corrida {run} se cerró el {closedAt}. Indicar una hora anterior si esto ocurrió antes; si no, registrarlo en la corrida abierta ahora.',
  'run-went-on':
    'De la corrida {run} se registró algo el {lastAt}, así que no puede haberse cerrado antes. Indicar una hora posterior, o corregir ese registro.',
  'before-run-start': 'La corrida {run} empezó el {startedAt}; esto es de una hora anterior. Corregir la hora.',
  'count-before-start':
    'La corrida {run} empezó el {startedAt}. Un recuento no puede ser de una hora anterior: corregir la hora.',
  'count-goes-back':
    'Un recuento de {packCount} no encaja: antes de esa hora se contaron {earlierCount} paquetes y después {laterCount}. Leer otra vez el contador, o corregir antes el recuento equivocado.',
  'count-or-counts': 'Enviar un recuento o una lista de recuentos, no las dos cosas.',
  'count-needed':
    'El último recuento de la corrida {run} es {lastCount}, de {lastAt}, demasiado antiguo para este momento. Leer el contador e indicar su recuento.',
  'code-printed-already':
    'El codificador imprime {code} desde {changedAt} según los registros de la corrida {run}. Si es otro código, escribirlo como está en el paquete.',
  'code-without-letters': 'Admite el código como está en el paquete: letras y cifras.',
  'film-lot-unknown':
    'El lote {code} es nuevo aquí. Comprobarlo en la bobina; si es correcto, indicar también su clase y el código de su proveedor.',
  'film-lot-of-other-kind':
    'El lote {code} se conoce aquí como {known:film-kind}, no como {kind:film-kind}. Comprobar el lote en la bobina.',
  'film-fitted-already':
    'El lote {code} está en la máquina desde {fittedAt} según los registros. Comprobar el lote en la bobina.',
  'more-loose-than-packed':
    'No puede haber {loosePackCount} {loosePackCount?paquete suelto|paquetes sueltos} de {packCount} {packCount?envasado|envasados}. Contar otra vez, o corregir el contador.',
  'line-stood-then':
    'Según los registros la línea {line} estaba parada entonces: {reason:stop-reason}, de {stoppedAt} a {startedAgainAt}. Ponerla antes en marcha, o corregir esa parada.',
  'line-stopped-since':
    'La línea {line} se paró también el {stoppedAt} ({reason:stop-reason}; volvió a andar: {startedAgainAt}). Si las dos son una sola parada, corregir su hora; si no, registrar esta con su fin.',
  'line-runs-already':
    'Según los registros la línea {line} está otra vez en marcha desde {startedAgainAt}. Registrar una parada nueva si está parada.',
  'restart-before-stop': 'La línea se paró el {stoppedAt}; no puede haberse puesto en marcha antes. Corregir la hora.',
  'never-rework': 'Lo que es {what:never-rework} nunca vuelve al producto. Elegir otro destino.',
  'never-rework-sweepings': 'barreduras',
  'never-rework-metal': 'rechazos por metal',
  'count-of-coder-change': 'el cambio del codificador',
  'count-of-film-change': 'el cambio de film',
  'no-run-then':
    'La línea {line} no tenía corrida el {at}, así que no había nada que rechazar ni paquetes. Corregir la hora, o registrar una muestra o barreduras por peso.',
  'line-without-hopper':
    'Según los registros ninguna tolva alimentaba la línea {line} el {at}. Corregir la hora, o la unión en la planta.',
  'scale-has-failed':
    'La báscula {scale} no pasó su última comprobación. Pesar otra vez en una báscula que la haya pasado.',
  'line-or-hopper-missing': 'Indicar la línea o la tolva de la que salió el azúcar.',
  'line-and-hopper': 'Indicar la línea o la tolva, no las dos: la tolva de una línea se encuentra por la hora.',
  'grams-or-packs-missing': 'Indicar el peso neto, o el número de paquetes.',
  'start-count-stays': 'La corrida {run} empieza con un recuento de cero; no es una lectura y se queda.',
  'count-of-a-change':
    'Este recuento se leyó con otro registro ({occasion:count-of}) y se corrige con él. Corregir en su lugar: {occasion:count-of}.',
  'correction-without-change': 'Decir qué es lo correcto en su lugar, o que no ocurrió.',
  'lot-on-no-pack':
    'Según los registros ningún paquete lleva {lot}. Registrar antes el cambio de código del codificador.',
  'lot-label-printed-already':
    'La tarjeta del lote {lot} ya se imprimió ({copies}). Decir por qué hace falta otra; llevará escrito que es una copia.',
  'code-not-as-intended':
    'La línea {line} imprimió {printed} desde el paquete {firstPack} de la corrida {run} ({changedAt}); el patrón pide {intended}. Mirar los paquetes y decidir: reetiquetar, retener o aceptar.',
  'packs-without-code':
    'Nadie registró el código de los primeros {packCount} paquetes de la corrida {run} (línea {line}). Leerlo en uno de ellos y registrarlo con su hora.',
  'several-lots': '{count} lotes llevan el código «{code}». Abrir el lote que corresponda y decidir allí sobre él.',
});
