import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'setpoint-advice':
    'Ajustar la media a {setpoint} g, según la báscula y la tara de esta línea. {rule} Deciden las personas; esto es un consejo.',
  'setpoint-binds-mean': 'La regla de la media es la que más pide.',
  'setpoint-binds-t1': 'La regla de los paquetes por debajo de T1 es la que más pide: con menos dispersión bajaría.',
  'setpoint-binds-t2':
    'La regla de los paquetes por debajo de T2 es la que más pide: con menos dispersión bajaría mucho.',
  'setpoint-sum': 'De qué se compone el ajuste',
  'setpoint-term': 'Sumando',
  'setpoint-lowest-mean': 'menor media verdadera que cumple las tres reglas',
  'setpoint-sampling-and-drift': 'azar: los paquetes pesados al ajustar y la deriva entre lotes',
  'setpoint-tare': 'límite de la tara',
  'setpoint-scale': 'límite del error de la báscula',
  'setpoint-rounding-up': 'redondeado hacia arriba al paso de la llenadora',
  'setpoint-is': 'ajuste',
  'setpoint-risk':
    'En no más del {any} % de los lotes el azar rompe una regla (se pidió el {asked} %), si báscula y tara yerran todo lo que pueden. El azar son {sampling} g por los paquetes pesados y {drift} g por la deriva, {together} g juntos; los errores de báscula y tara son los mismos en cada lote y se suman enteros.',
  'setpoint-not-in-risk':
    'Fuera de este riesgo quedan: pesos que no se reparten como una campana (mirar el histograma), una dispersión o deriva conocida por pocos lotes, una línea que cambia. Los lotes entre dos ajustes comparten un mismo error de ajuste y fallan juntos. La metrología legal varía según el país; las reglas de la propia autoridad van primero.',
  'setpoint-saves':
    'Ahora la línea regala {away} kg netos al mes, por valor de {awayMoney}; este ajuste ahorraría {kilograms} kg, por valor de {money}.',
  'setpoint-costs':
    'Ahora la línea regala {away} kg netos al mes, por valor de {awayMoney}; este ajuste necesita {kilograms} kg más, por valor de {money}, porque el actual no cumple las reglas con este riesgo.',
  'setpoint-short':
    'Ahora los paquetes contienen al mes {away} kg menos de lo que dicen, por valor de {awayMoney}; este ajuste necesita {kilograms} kg más, por valor de {money}. Preguntar a calidad qué se hace con los paquetes a los que les falta.',
  'setpoint-saves-unpriced': 'Ahora la línea regala {away} kg netos al mes; este ajuste ahorraría {kilograms} kg.',
  'setpoint-costs-unpriced':
    'Ahora la línea regala {away} kg netos al mes; este ajuste necesita {kilograms} kg más, porque el actual no cumple las reglas con este riesgo.',
  'setpoint-short-unpriced':
    'Ahora los paquetes contienen al mes {away} kg menos de lo que dicen; este ajuste necesita {kilograms} kg más. Preguntar a calidad qué se hace con los paquetes a los que les falta.',
});
