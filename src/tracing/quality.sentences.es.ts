import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'quality-caption': 'Calculado, no analizado: cómo debería ser',
  'quality-property': 'Propiedad',
  'quality-value': 'Calculado',
  'quality-range': 'Fluya como fluya la tolva',
  'quality-method': 'Método de sus big bags',
  'quality-basis': 'Con qué seguridad',
  'quality-with-doubt': '{value} ± {standard}',
  'quality-between': '{lowest} a {highest}',
  'quality-range-not-known': 'no se sabe: un big bag que puede estar dentro no tiene resultado',
  'quality-doubt-by-repeats':
    '± una incertidumbre típica, según {count} {count?repetición|repeticiones} del laboratorio; sin lo que el método desvía todos los resultados y sin la tolva',
  'quality-doubt-not-known': 'Incertidumbre desconocida: pocas muestras se analizaron otra vez últimamente',
  'quality-says':
    'La media de los resultados de los big bags según su masa probable. Indica dónde mirar y no es un análisis: no ponerla nunca como tal en un certificado o una etiqueta.',
  'quality-nothing-inside': 'Es probable que no haya dentro nada de sus big bags',
  'quality-methods-differ': 'Sus big bags se analizaron con métodos que no se pueden promediar: {methods}',
  'quality-results-missing':
    'El {percent} % aún no tiene resultado: {bags} (y {more} más). Esperarlos o hacer un análisis',
  'quality-no-blend-spreads-add':
    'No se calcula: las dispersiones de los big bags se suman a la de sus medias, así que hay que tamizarlo',
  'quality-no-blend-not-proportional': 'No se calcula: no sigue la masa, así que hay que medirlo',
  'quality-no-blend-counted-apart':
    'No se calcula: unas pocas cosas sueltas no se reparten por igual, así que hay que contarlas',
  'quality-no-blend-not-known': 'No se calcula: nadie ha dicho que se mezcle según la masa, así que hay que medirlo',
});
