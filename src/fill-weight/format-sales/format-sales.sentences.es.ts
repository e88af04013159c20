import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'sold-nowhere': 'Elegir al menos un mercado en el que se vende {format}.',
  'market-twice': 'Un mercado figura dos veces: {markets}. Nombrar cada uno una vez.',
  'currency-without-price':
    'La moneda {currency} no dice nada sin un precio del kilogramo. Dar también el precio, o dejar vacíos los dos.',
  'form-currency': 'tres letras de ISO 4217, como EUR',
  'said-sale-set': 'Registrado dónde se vende el formato.',
  'sale-title': 'Mercados y precios de los formatos de paquete',
  'sale-says':
    'Según estas reglas se muestra primero una corrida, se informa de ella por entero y se aconseja, y con este precio se dice en dinero el exceso entregado. Donde no se dijo nada, se muestra la Unión Europea y ningún dinero.',
  'sale-list': 'Dónde se venden ahora los formatos',
  'sale-format': 'Formato de paquete',
  'sale-markets': 'Se vende en',
  'sale-since': 'Desde cuándo',
  'sale-since-hint': 'Vacío: ahora. Solo lo primero que se dice de un formato puede empezar en el pasado.',
  'sale-not-said': 'nadie lo dijo',
  'sale-no-formats': 'aún no hay ningún formato',
  'sale-set': 'Decir dónde se vende un formato',
  'sale-to-set-up': 'A la puesta en marcha',
  'step-sales': 'Mercados y precios',
  'step-sales-says': 'dónde se vende cada formato y cuánto vale un kilogramo',
  'sale-currency-hint': 'Tres letras, como EUR. Vacío: los importes se muestran sin moneda.',
  'field-name-currency': 'Moneda del precio',
  'journal-name-currency': 'moneda',
  'field-name-markets': 'Se vende en',
  'journal-name-markets': 'mercados',
  'sale-of-run': 'Se vende en: {markets}.',
  'sale-of-run-not-said': 'Nadie dijo dónde se vende este formato; se muestra la Unión Europea.',
  'sale-link': 'Mercados y precios',
  'run-weights-giveaway-money': 'Exceso entregado de todos los paquetes en dinero',
  'run-weights-priced': 'A {price} el kilogramo, como se fijó para este formato desde {since}.',
  'weight-report-sold': 'Se vende en',
  'weight-report-sold-says': '{markets}',
  'weight-report-sold-not-said':
    'no registrado; se imprimen por entero las reglas de la Unión Europea y de los Estados Unidos',
});
