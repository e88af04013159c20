import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'suspects-none-cures': 'Ningún error único explica todo esto. Figuran los que dejan menos: buscar dos.',
  'suspects-tied': '{count} de estos encajan más o menos igual: los registros solos no dicen cuál fue. Mirarlos todos.',
  'suspects-only-one': 'Solo un error único explica todo esto.',
  'suspects-lead': 'El primero encaja {times} veces mejor que el siguiente.',
  'suspects-fit-says':
    'Encaja: la parte de los tamaños usuales de tal error tras los que ya nada es imposible; todas las clases cuentan como igual de frecuentes. No se buscan dos errores a la vez.',
  'suspect-what': 'Error único',
  'suspect-fit': 'Encaja',
  'suspect-leaves': 'Deja sin explicar',
  'suspect-told': 'Frente a los demás',
  'suspect-is-tied': 'tan probable como otros',
  'suspect-is-best': 'encaja mejor',
  'suspect-is-less': 'encaja menos',
  'suspect-tip': '{bag} en {hopper}, {at}',
  'missing-tip-shown':
    'Un vertido de {mass} que nadie introdujo ya se habría visto si fue antes de {at}. Desde entonces aún puede haber uno oculto.',
  'missing-tip-hidden':
    'Aún no se puede decir si falta un vertido de {mass}: una tolva que se mantiene más llena que eso lo oculta hasta que baja, alguien mira dentro o se comprueba vacía.',
  'suspect-tied': '{first:suspect}; {also:mistake} lo explicaría igual de bien, y los registros solos no lo dicen',
  'suspect-led': '{first:suspect}; encaja {times} veces mejor que el siguiente',
  'suspect-alone': '{first:suspect}; ningún otro error único lo explica todo',
  'mistake-tip-missing': 'un vertido que nadie introdujo',
  'mistake-tip-entered-twice': 'un vertido introducido dos veces',
  'mistake-tip-late': 'un vertido introducido demasiado tarde',
  'mistake-wrong-tare': 'una tara errónea',
  'mistake-wrong-hopper': 'un vertido introducido en otra tolva',
  'mistake-exits-missing': 'paquetes o rechazos que nadie contó',
  'mistake-exits-too-many': 'paquetes o rechazos de más',
  'mistake-empty-was-none': 'un nivel o vacío que no lo fue',
});
