import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  site: 'planta',
  dryer: 'secador',
  hopper: 'tolva',
  'packing-line': 'línea de envasado',
  coder: 'codificador',
  scale: 'báscula',
  grade: 'grado',
  specification: 'especificación',
  'pack-format': 'formato de paquete',
  customer: 'cliente',
  'store-place': 'lugar del almacén',
  'shift-pattern': 'esquema de turnos',
  'hopper-line': 'unión de tolva y línea',
  'coder-clock': 'comparación del reloj de un codificador',
  'pack-format-grade': 'grado de un formato',
  'scale-check': 'comprobación de una báscula',
  'scale-verification': 'verificación de una báscula',
  'rule-set': 'conjunto de reglas',
  'place-store': 'almacén',
  'place-dock': 'muelle',
  'place-line': 'final de una línea',
  'tipping-released-only': 'solo una vez liberado',
  'tipping-tip-at-risk': 'a riesgo, antes de sus resultados',
});

addSentences('es', {
  'code-taken': 'El código {code} está ocupado. Elegir otro; los códigos no se usan dos veces.',
  'valid-from-not-later':
    'Esto empezaría el {stated}, pero ya hay una versión que empieza el {latest}. Indicar una hora posterior, o corregir antes esa versión.',
  'coder-clock-out-of-order':
    'El codificador {coder} también se comparó el {other}, y esta comparación pasaría al otro lado de aquella. Indicar una hora de su propio lado, o corregir antes aquella.',
  'valid-from-in-the-past':
    'Esto empezaría el {stated}, que ya pasó; lo juzgado desde entonces queda juzgado. Hacer que empiece ahora o más tarde.',
  'site-there-already': 'Esta planta ya está configurada. Abrir la página de la planta.',
  'time-zone-unknown': 'No hay zona horaria «{timeZone}». Indicar un nombre IANA, como Europe/Berlin.',
  'gln-wrong': '«{gln}» no es un GLN: tiene 13 cifras, y la última comprueba las demás. Leerlo otra vez.',
  'company-prefix-wrong': '«{companyPrefix}» no es un prefijo de empresa GS1: tiene de 4 a 12 cifras. Leerlo otra vez.',
  'gln-not-of-prefix': 'El GLN {gln} no empieza con el prefijo de empresa {companyPrefix}. Leer los dos otra vez.',
  'hopper-feeds-line-already': 'La línea {line} ya se alimenta así. No hay nada que cambiar.',
  'contact-removed-already': 'El nombre y la dirección del cliente {code} ya se quitaron.',
  'specification-line-twice':
    'La especificación pide {property:measured} por {method} dos veces. Quitar una de las dos líneas.',
  'specification-limits-crossed':
    'Para {property:measured} el mínimo, {minimum}, está por encima del máximo, {maximum}. Corregir los dos límites.',
  'gtin-not-digits': '«{gtin}» no es un GTIN: solo tiene cifras. Leerlo otra vez.',
  'gtin-wrong-length': '«{gtin}» no es un GTIN: tiene 8, 12, 13 o 14 cifras. Leerlo otra vez.',
  'gtin-check-digit': 'La última cifra de «{gtin}» no comprueba las demás. Leer el número otra vez.',
  'gtin-restricted-prefix':
    '«{gtin}» es un número para uso dentro de una empresa o región y no puede ir en mercancía que sale. Indicar un número del prefijo propio.',
  'gtin-variable-measure':
    '«{gtin}» es de mercancía de peso variable. Un paquete de venta con una cantidad nominal lleva un número que no empieza por 9 en 14 cifras.',
  'gtin-of-other-content':
    'El número {gtin} está en el formato {format} con {grams} g. Un número es un contenido: indicar otro número.',
  'assumed-limits-not-around-nominal':
    'Los límites de la media (de {lower} a {upper} mg) tienen que rodear el nominal de {nominal} mg. Corregirlos.',
  'code-pattern-wrong': 'El codificador no puede imprimir «{pattern}»: {problem:pattern} {token}. Corregir el patrón.',
  'pattern-empty': 'está vacío',
  'pattern-too-long': 'es demasiado largo',
  'pattern-unknown-token': 'no existe esta pieza:',
  'pattern-token-twice': 'esta pieza está dos veces:',
  'pattern-no-day': 'no tiene día',
  'pattern-half-a-day': 'tiene solo medio día',
  'pattern-half-a-time': 'tiene solo media hora (faltan horas o minutos)',
  'pattern-half-a-best-before': 'tiene solo medio día de consumo preferente',
  'code-pattern-asks-best-before':
    '«{pattern}» imprime un día de consumo preferente, pero el formato no lo tiene. Indicar sus meses, o quitar el día.',
  'code-pattern-fits-no-line':
    'El patrón tiene sitio para {width} caracteres de una línea, pero las líneas son {codes}. Cambiar el ancho del patrón.',
  'code-pattern-fits-no-shift':
    'El patrón tiene sitio para {width} caracteres de un turno, pero los turnos son {codes}. Cambiar el ancho del patrón.',
  'format-takes-grade-already': 'El formato {format} ya admite el grado {grade}.',
  'scale-check-there-already':
    'La báscula {scale} ya tiene una comprobación de {at}. Indicar otra hora, o corregir esa comprobación.',
  'verification-there-already': 'La báscula {scale} ya tiene una verificación desde {verifiedOn}. Corregir antes esa.',
  'verification-ends-before-it-begins':
    'La verificación terminaría el {verifiedUntilOn}, antes de empezar el {verifiedOn}. Corregir los días.',
  'rules-incomplete': 'Las reglas de la clase {kind} necesitan {missing}. Indicarlo.',
  'check-point-twice': 'El punto {code} está dos veces en el control. Quitar uno.',
  'rule-in-force':
    'Esto está en vigor desde {since}; con ello se han juzgado cosas. Fijar una versión nueva, que lo sustituye.',
});

addSentences('es', {
  'time-not-of-the-clock': 'Una hora no es del reloj. Indicar horas como 06:00.',
  'no-shifts': 'Un esquema necesita un turno. Indicar al menos uno.',
  'first-shift-not-at-production-day-start':
    'El primer turno tiene que empezar con el día de producción, a las {productionDayStart}. Poner los turnos en su orden.',
  'shifts-not-in-order':
    'Los turnos no están en el orden en que empiezan. Ordenarlos; ninguno empieza a la vez que otro.',
  'shift-code-empty-or-twice': 'Dos turnos tienen el mismo código. Dar a cada uno el suyo.',
  'rota-start-not-a-day': 'El primer día de la rotación no es un día del calendario. Corregirlo.',
  'rota-start-missing': 'Los equipos necesitan el día de producción en que empiezan sus ciclos. Indicarlo.',
  'crew-empty-or-twice': 'Dos equipos tienen el mismo nombre. Dar a cada uno el suyo.',
  'cycle-empty': 'Un equipo no tiene días. Indicar su ciclo, con un guion para un día libre.',
  'cycle-names-unknown-shift': 'El ciclo de un equipo nombra un turno que el esquema no tiene. Corregir el ciclo.',
  'two-crews-on-one-shift': 'Los ciclos ponen dos equipos en un mismo turno algún día. Corregirlos.',
});

addSentences('es', {
  'plant-title': 'Planta',
  'plant-site': '{name} ({code}), zona horaria {timeZone}',
  'plant-numbers': 'GLN {gln}, prefijo de empresa {prefix}; el día de producción empieza a las {start}.',
  'plant-no-shift': 'Todavía no hay turnos. Sin ellos no se pueden decir los días de producción ni los turnos.',
  'plant-shift':
    'Ahora: día de producción {on}, turno {shift}, de {from} a {until}, {minutes} {minutes?minuto|minutos}.',
  'plant-crew': 'Equipo {crew}.',
  'plant-shifts': 'Turnos',
  'plant-dryers': 'Secadores',
  'plant-hoppers': 'Tolvas',
  'plant-lines': 'Líneas de envasado',
  'plant-scales': 'Básculas',
  'plant-grades': 'Grados',
  'plant-formats': 'Formatos de paquete',
  'plant-customers': 'Clientes',
  'plant-places': 'Lugares',
  'plant-code': 'Código',
  'plant-name': 'Nombre',
  'plant-kind': 'Clase',
  'plant-starts': 'Empieza',
  'plant-capacity': 'Cabe como máximo',
  'plant-feeds': 'Alimenta líneas',
  'plant-flow': 'Cómo se supone que fluye',
  'plant-flow-see': 'modelo y ensayos',
  'plant-fed-by': 'Alimentada por',
  'plant-fed-by-none': 'ninguna tolva',
  'plant-fed-since': '{hopper}, desde {at}',
  'plant-coder': 'Codificador',
  'plant-clock': 'Su reloj',
  'plant-clock-right': 'en hora, con {uncertainty} s de margen',
  'plant-clock-ahead': '{seconds} s adelantado, con {uncertainty} s de margen',
  'plant-clock-behind': '{seconds} s atrasado, con {uncertainty} s de margen',
  'plant-interval': 'Escalón',
  'plant-error': 'Error permitido',
  'plant-checked': 'Última comprobación',
  'plant-never-checked': 'nunca',
  'plant-due': 'Próxima comprobación',
  'plant-scale-overdue': 'Vencida: lo que pesa es dudoso. Comprobarla.',
  'plant-scale-failed': 'No pasó la última comprobación. Usar otra báscula y avisar a calidad.',
  'plant-verified': 'Verificada para el comercio',
  'plant-verified-until': 'hasta {on}',
  'plant-not-verified': 'no: no se puede vender nada por su peso',
  'plant-tipping': 'Se vuelca',
  'plant-specification': 'Especificación',
  'plant-limits-both': '{property} de {minimum} a {maximum}',
  'plant-limits-most': '{property} como máximo {maximum}',
  'plant-limits-least': '{property} como mínimo {minimum}',
  'plant-limits-none': '{property}: se informa',
  'plant-gtin': 'GTIN',
  'plant-takes': 'Admite grados',
  'plant-pallet': 'En un palé completo',
  'plant-packs': '{count} {count?paquete|paquetes}',
  'plant-printed': 'Código impreso',
  'plant-best-before': 'Consumo preferente',
  'plant-months': '{count} {count?mes|meses}',
  'plant-gln': 'GLN',
  'plant-name-removed': 'quitado',
  'plant-none': 'ninguno',
  'plant-kilograms': '{kilograms} kg',
  'plant-caution-hopper':
    'Nadie se pone ni mete las manos bajo un big bag colgado, y nadie abre una tolva ni entra en ella antes de bloquear todos los accionamientos que la llenan o la vacían. El polvo de azúcar puede explotar: sin polvo en las superficies y lejos de chispas. Las normas locales y las personas habilitadas deciden cómo; esta página no.',
  'plant-caution-scale':
    'Qué básculas se pueden usar para el comercio, y quién las verifica, lo dice la ley local. Esta página muestra lo que se registró; decide la marca de la báscula.',
});
