import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  complaint: 'reclamación',
  'complaint-step': 'anotación de una reclamación',
  'complaint-closed': 'La reclamación {complaint} está cerrada. Primero hay que reabrirla con su motivo.',
  'complaint-not-closed':
    'La reclamación {complaint} no está cerrada; no hay nada que reabrir. Se sigue con ella tal como está.',
  'complaint-without-cause':
    'No consta la causa de la reclamación {complaint}. Anotarla, o que no se encontró ninguna; luego cerrarla.',
  'complaint-not-answered':
    'Nadie ha contestado aún la reclamación {complaint}. Contestar al cliente, o decir por qué no se puede; luego cerrarla.',
  'complaint-withdrawn':
    'La reclamación {complaint} fue retirada. Se puede leer; si hay algo más, se registra una nueva.',
  'complaint-moved-on':
    'Otra persona acaba de cambiar la reclamación {complaint}. Abrirla de nuevo, mirar qué cambió y decidir entonces.',
  'complaint-class-unchanged': 'La reclamación {complaint} ya es de esta categoría y gravedad. Elegir otra.',
  'complaint-contact-gone': 'Con la reclamación {complaint} no se guarda ningún nombre. No hay nada que borrar.',
  'contact-without-name':
    'Un teléfono o una dirección necesita un nombre. Escribir de quién es, o dejar ambos en blanco.',
  'complaint-food-safety':
    'La reclamación {complaint} puede afectar a la inocuidad del alimento. Investigarla ya: ver qué comparten sus paquetes y decidir si se retienen.',
  'complaint-came-in':
    'Ha llegado la reclamación {complaint}. Investigarla, encontrar la causa y contestar al cliente.',
  'cause-complaint-food-safety': 'Una reclamación sobre la inocuidad del alimento',
  'complaint-is-open': 'abierta',
  'complaint-is-looking-into': 'en investigación',
  'complaint-is-answered': 'contestada',
  'complaint-is-closed': 'cerrada',
  'complaint-is-reopened': 'reabierta',
  'complaint-is-withdrawn': 'retirada',
  'complaint-about-foreign-body': 'cuerpo extraño',
  'complaint-about-insects': 'insectos',
  'complaint-about-illness': 'malestar o enfermedad',
  'complaint-about-odour-taste': 'olor o sabor',
  'complaint-about-colour': 'coloración',
  'complaint-about-lumps': 'terrones',
  'complaint-about-short-weight': 'falta de peso',
  'complaint-about-damaged-pack': 'paquete dañado',
  'complaint-about-wrong-code': 'código o etiqueta incorrectos',
  'complaint-about-other': 'otra cosa',
  'severity-food-safety': 'inocuidad del alimento',
  'severity-not-as-sold': 'no es lo que se vendió',
  'severity-nuisance': 'molestia',
  'complaint-named': 'Reclamación {complaint}',
});
