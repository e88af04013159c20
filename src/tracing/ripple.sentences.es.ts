import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'look-first':
    'Entretanto otros registraron cosas posteriores, que esto puede cambiar. Mirar qué cambia y registrarlo después.',
  'ripple-title': 'Qué cambia esto',
  'ripple-nothing-yet': 'Todavía no se ha registrado nada.',
  'ripple-act': 'Registrarlo',
  'ripple-back': 'No registrarlo',
  'ripple-nothing': 'Esto no cambia ningún lote, ningún palé ni ninguna entrega.',
  'ripple-changes':
    'Esto cambia lotes: {lots}; palés: {pallets}; entregas que ya han salido: {gone}; entregas que siguen aquí: {here}.',
  'ripple-by': 'Lo que un big bag puede tener en uno de ellos cambia como máximo en {kilograms} kg.',
  'ripple-by-nothing': 'En ellos no cambian kilogramos de ningún big bag.',
  'ripple-bag': 'Big bag {bag}: {before} → {after}.',
  'ripple-bag-none': 'no existe',
  'ripple-holds': 'Retenciones',
  'ripple-hold-reaches': 'La retención {hold} alcanza ahora también {count}:',
  'ripple-hold-leaves': 'La retención {hold} deja de alcanzar {count}:',
  'ripple-and-more': 'y {count} más',
  'ripple-more-pallets': 'Y {count} {count?palé|palés} más.',
  'ripple-lots': 'Lotes que cambian',
  'ripple-lot': 'Lote',
  'ripple-film': 'Lote de film',
  'ripple-packs': 'Paquetes',
  'ripple-by-head': 'Cambia como máximo, kg',
  'ripple-sources': 'Qué cambia',
  'ripple-pallets': 'Palés que cambian',
  'ripple-pallet': 'Palé',
  'ripple-where': 'Dónde está',
  'ripple-from-to': '{before} → {after}',
  'ripple-none': 'ninguno',
  'ripple-ruled-out': 'descartado',
  'ripple-amounts': '{word}, {likely} kg (de {least} a {most})',
  'ripple-reading':
    'Codificador {coder} de la línea {line}: los códigos que muestran de {shownFrom} a {shownUntil} se leen como envasados de {from} a {until}, con {uncertainty} s de margen; hasta ahora, de {wasFrom} a {wasUntil}, con {wasUncertainty} s de margen.',
  'ripple-reading-on':
    'Codificador {coder} de la línea {line}: los códigos que muestran {shownFrom} o más tarde se leen como envasados desde {from}, con {uncertainty} s de margen; hasta ahora, desde {wasFrom}, con {wasUncertainty} s de margen.',
  'ripple-reread': 'Lo que significan las horas de sus paquetes',
});
