import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  handover: 'relevo',
  'handover-signed-already':
    'El relevo del turno {shift} del {day} en la línea {line} se firmó el {at}. Lo que surgió después va al próximo relevo, o a «No estoy de acuerdo» al abrir la línea.',
  'handover-answered-already':
    'La línea {line} ya fue recibida. Mirar ese relevo; una observación nueva es un punto abierto.',
  'opening-by-outgoing':
    'El relevo de la línea {line} lo entregó esta misma persona; otra debe confirmar la apertura. Pedirlo al jefe de línea que la recibe.',
  'handover-not-confirmed':
    'El relevo de la línea {line} lo firmó una sola persona (turno {shift}). Quien la abra ahora confirma la apertura en su página.',
  'handover-not-agreed':
    'El jefe de línea entrante no está de acuerdo con el relevo de la línea {line}: «{says}». Mirarlo con los dos.',
});
