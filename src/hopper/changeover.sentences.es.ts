import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  changeover: 'cambio de formato',
  'rung-last-pack-out': 'último paquete fuera',
  'rung-hopper-empty': 'tolva comprobada vacía',
  'rung-reject-bin-closed': 'contenedor de rechazos cerrado',
  'rung-film-back': 'film y etiquetas viejos devueltos',
  'rung-code-checked': 'bobina nueva puesta, código impreso leído por dos personas',
  'line-without-run': 'La línea {line} aún no ha envasado nada; no hay de qué cambiar. Empezar la corrida.',
  'changeover-open-already':
    'La línea {line} ya está en cambio a {format}. Terminar esa escalera o decir por qué no se hace.',
  'changeover-to-same-format': 'La línea ya envasa {format}. Elegir el formato que sigue.',
  'changeover-not-finished':
    'La línea {line} está en cambio de formato. Sigue el peldaño {place} de 5: {next:rung}. Hacerlo y luego empezar la corrida.',
  'happened-changeover-not-finished':
    'Empezó una corrida de otro formato en la línea {line} con el cambio en el peldaño {place} de 5. Mirar qué puede estar mezclado.',
  'rung-not-next': 'En la línea {line} no se salta ningún peldaño. Sigue: {next:rung}.',
  'last-pack-not-out': 'La corrida {run} sigue abierta. Contar su último paquete y cerrarla.',
  'hopper-not-empty-yet':
    'La tolva {hopper} no se ha comprobado vacía desde el último paquete. Parar el flujo, mirar dentro con otra persona y registrarlo.',
  'bin-not-closed-yet':
    'No hay ningún contenedor cerrado {bin} con paquetes de la corrida {run}. Cerrarlo con sus paquetes, pesarlo o decir que estaba vacío.',
  'new-run-not-started':
    'No hay ninguna corrida de {format} abierta en la línea {line}. Empezarla y leer el primer código.',
  'new-film-not-fitted': 'No hay film registrado en la corrida {run}. Escanear primero la bobina nueva.',
  'new-code-not-read': 'No hay código registrado en la corrida {run}. Leerlo del primer paquete y registrarlo.',
  'changeover-climbed-already': 'El cambio de formato de la línea {line} está terminado. No hay nada que anular.',
  'no-refusal-met':
    'El big bag {bag} no fue rechazado aquí a esta persona en los últimos {minutes} minutos. Escanearlo como siempre; si entró antes, registrar el volcado con su hora y decir por qué.',
  'already-in':
    'El big bag {bag} fue rechazado ({rule}) y aun así entró en la tolva {hopper}, según quien recibió el rechazo. Decidir qué pasa con todo en lo que puede estar.',
});
