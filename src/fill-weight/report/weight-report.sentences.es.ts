import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'weight-report-title': 'Pesos de llenado de la corrida',
  'weight-report-continued': 'continuación',
  'weight-report-page': 'página {page} de {pages}',
  'weight-report-issued': 'emitido {at}, {who}',
  'weight-report-open': 'La corrida estaba abierta cuando se emitió: dice cómo estaba entonces.',
  'weight-report-site': 'Envasado por',
  'weight-report-site-says': '{site}, con GLN {gln}',
  'weight-report-line': 'Línea',
  'weight-report-line-says': '{line}',
  'weight-report-format': 'Paquete',
  'weight-report-format-says': '{name}, GTIN {gtin}, cantidad nominal {grams} g',
  'weight-report-lots': 'Lotes',
  'weight-report-lots-says': '{lots}',
  'weight-report-times': 'Envasado el',
  'weight-report-times-says': '{from} hasta {until}',
  'weight-report-tare': 'Tara',
  'weight-report-tare-says':
    '{grams} g según la ficha del paquete. Los netos son los que envió la pesadora; las correcciones constan abajo.',
  'weight-report-scale': 'Báscula',
  'weight-report-scale-says':
    '{code}, escalón de lectura de {step} g; según su última verificación o prueba se desvía {error} g como máximo.',
  'weight-report-scale-good-enough': '{law}: suficiente, {found} g frente a {allowed} g ({clause}).',
  'weight-report-scale-too-coarse':
    '{law}: demasiado gruesa para este paquete, {found} g frente a {allowed} g ({clause}).',
  'weight-report-scale-cannot': 'No puede pesar tales paquetes.',
  'weight-report-law-directive': 'Error frente a un quinto del error máximo por defecto tolerado (UE, Reino Unido)',
  'weight-report-law-oiml-r87': 'Incertidumbre frente a 0,2 T (OIML R 87)',
  'weight-report-law-handbook-133':
    'Escalón frente a un sexto de la variación máxima admisible (EE. UU., NIST Handbook 133)',
  'weight-report-counts': 'Recuentos y cifras',
  'weight-report-what': 'Qué',
  'weight-report-found': 'Hallado',
  'weight-report-mean': 'Neto medio de los paquetes pesados',
  'weight-report-uncounted': 'Pesados y no contados',
  'weight-report-overall-kept': 'se cumplen todas las reglas',
  'weight-report-overall-broken': 'no se cumplen: {rules}',
  'weight-report-overall-not-judged': 'no se pudieron juzgar todas las reglas',
  'weight-report-hour': 'Hora, desde',
  'weight-report-when': 'Pesado',
  'weight-report-sequence': 'N.º de secuencia',
  'weight-report-net': 'Neto (g)',
  'weight-report-short': 'Paquetes aceptados por debajo de T2, primero el más ligero',
  'weight-report-more-short': '{count} {count?paquete más está|paquetes más están} por debajo de T2.',
  'weight-report-tares': 'Taras corregidas después',
  'weight-report-tare-corrected':
    '{at}: {grams} g sumados a cada neto de las secuencias {from} a {to}, {packs} {packs?paquete|paquetes}. Motivo: {reason}',
  'weight-report-tare-withdrawn':
    '{at}: se sumaron {grams} g a cada neto de las secuencias {from} a {to}, {packs} {packs?paquete|paquetes}, y se retiró después. Motivo: {reason}',
  'weight-report-anew': 'Todas las cifras de este informe se calcularon de nuevo con los netos corregidos.',
  'weight-report-note': 'Para leer junto a esto',
  'weight-report-inspector':
    'Las cifras son sumas de los propios pesos del envasador: un inspector toma una muestra y decide.',
  'weight-report-memory':
    'Donde se dice que una cifra es de memoria, calculada o lectura propia, el texto de la ley no estaba a mano: consultarlo antes de fiarse.',
  'weight-report-none': 'Ninguno.',
  'weight-report-issue': 'Emitir un informe para un inspector (PDF)',
  'weight-report-issue-says': 'Se guarda como se emite. Pesos o correcciones posteriores necesitan otro.',
  'weight-reports': 'Informes emitidos',
  'weight-report-issued-at': 'Emitido',
  'weight-report-open-file': 'Abrir el informe del {at}',
});
