import { addSentences } from './sentences.js';

addSentences('es', {
  'way-dryer': 'Secadero',
  'way-line': 'Línea',
  'way-quality': 'Calidad',
  'way-results': 'Resultados',
  'way-dispatch': 'Expedición',
  'way-dock': 'Muelle',
  'way-today': 'Hoy',
  'way-set-up': 'Configuración',
  'way-records': 'Registros',
  'find-label': 'Cualquier código o número',
  'find-act': 'Buscar',
  'band-title': 'Última lectura',
  'band-scan': 'Escanear o teclear un número',
  'band-look': 'Ver',
  'band-hint': 'Escanear en cualquier momento. Aquí se muestra qué es y qué se puede hacer con ello.',
  'choose-one': 'Elegir …',
  'choose-none': '–',
  'form-look-again': 'No registrado. Revisar lo señalado; lo introducido sigue ahí.',
  'sheet-as-at': 'A fecha de {at}',
});
