import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'bag-label-title': 'Big bag {bag}',
  'bag-label-bag': 'BIG BAG',
  'bag-label-copy': 'COPIA {number}',
  'bag-label-net': 'NETO {kilograms}',
  'bag-label-gross': 'bruto {kilograms}',
  'bag-label-tare': 'tara {kilograms}',
  'bag-label-preset': 'PT (tara predeterminada)',
  'bag-label-scale': 'báscula {scale}',
  'bag-label-safe-load': 'carga segura {kilograms}',
  'bag-label-liner': 'lote del forro {lot}',
  'bag-label-doubtful': 'PESO DUDOSO: no vender por peso',
  'bag-label-state': 'Esta etiqueta no promete ningún estado: consultar el big bag antes de usarlo.',
  'bag-label-opened': 'abierto el',
  'bag-label-rest': 'resto kg',
  'bag-label-caution':
    'Carga suspendida: nadie debajo ni al lado del big bag. Levantar por todas las asas, nunca por encima de la carga segura. Las normas locales van primero.',
  'bag-label-tear-off': 'Arrancar en el polipasto; queda con la hoja de volcados.',
  'bag-label-of-run': 'corrida del secador {run}',
  'bag-label-of-opening': 'existencias iniciales',
  'bag-label-of-receipt': '{lot} de {supplier} · {receipt}',
});
