import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'customer-title': 'Cliente {code}',
  'customer-code': 'Código',
  'customer-address': 'Dirección',
  'customer-telephone': 'Teléfono',
  'customer-papers': 'Documentos para este cliente',
  'customer-papers-says':
    'Los albaranes que se emitan desde ahora están en este idioma. Los documentos emitidos quedan como están, también las copias.',
  'customer-papers-choice': 'Idioma de los documentos',
  'customer-papers-as-site': 'como los documentos de la planta',
  'customer-papers-set': 'Fijar el idioma',
  'customer-papers-said': 'El idioma de los documentos está fijado.',
  'customer-deliveries': 'A las entregas',
  'plant-papers': 'Documentos',
  'papers-language-en': 'inglés',
  'papers-language-es': 'español',
  'papers-language-of-site': 'Etiquetas, relevos y balances en papel están en: {language:papers-language}.',
  'papers-as-site': '{language:papers-language}, como los documentos de la planta',
  'note-will-be-in': 'El albarán estará en: {language:papers-language}.',
  'note-language-change': 'Otro idioma para este cliente',
  'label-will-be-in': 'La etiqueta estará en: {language:papers-language}.',
  'paper-page-to': 'Para la impresora, en: {language:papers-language}',
  'paper-page-back': 'Volver a la página en español',
});
