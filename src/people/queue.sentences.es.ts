import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'queue-needs-shared-device':
    'Los registros solo esperan en una tableta compartida o un terminal de mano dado de alta. Entrar en uno de ellos, o enviar esto mientras haya red.',
  'queue-proof-not-known':
    'Este aparato ya no puede mostrar de quién son los registros que esperan en él. Entrar en él y enviarlos otra vez; no se pierde nada.',
  'queue-proof-not-for-this':
    'Esto no puede esperar en un aparato: hace falta una persona que haya entrado. Entrar y hacerlo otra vez.',
  'happened-at-missing': 'Decir cuándo ocurrió, según el reloj del aparato: 2026-03-12T07:41:03.412Z.',
  'entry-outside-proof':
    'Ocurrió a las {happenedAt}, pero esta persona estuvo en el aparato de {issuedAt} a {signedOutAt}. Averiguar de quién es el registro y anotarlo como suyo.',
});
