import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  person: 'persona',
  device: 'dispositivo',

  'sign-in-failed':
    'No coincide. Comprobar el código y la contraseña, la persona y el PIN, o la tarjeta, e intentarlo otra vez.',
  'too-many-attempts':
    'Demasiados intentos fallidos. Esperar {minutes} {minutes?minuto|minutos} e intentarlo otra vez; hasta entonces no se admite ni el correcto.',
  'device-not-enrolled':
    'La tarjeta y el PIN solo valen en una tableta o un terminal de mano compartidos que un administrador haya dado de alta. Usar aquí la contraseña.',
  'person-has-no-role':
    'Esta persona no tiene (o ya no tiene) ningún puesto aquí, así que no hay nada en que entrar. Hablar con un administrador.',
  'password-change-needed': 'Se ha entrado con una contraseña de un solo uso. Elegir antes una propia.',
  'password-wrong': 'La contraseña actual no es esta. Escribirla otra vez.',
  'password-not-new': 'La contraseña nueva es la anterior. Elegir otra.',
  'password-too-short':
    'La contraseña nueva es demasiado corta. Usar al menos {least} caracteres; unas cuantas palabras van bien.',
  'password-has-code': 'La contraseña nueva contiene el código propio, que otros conocen. Elegir otra.',
  'password-too-easy':
    'La contraseña nueva se adivina con demasiada facilidad: pocos caracteres distintos, o una serie seguida. Elegir otra.',
  'password-changed-meanwhile':
    'Otra petición cambió la contraseña en el mismo momento. Iniciar sesión con esa, o hablar con un administrador.',
  'pin-too-easy':
    'Este PIN se adivina con demasiada facilidad: una cifra repetida, una serie seguida, o el código propio. Elegir otro.',
  'person-code-taken': 'El código «{code}» ya es de alguien. Elegir otro; los códigos no se usan dos veces.',
  'person-holds-role':
    '«{code}» tiene todavía un puesto. Terminar antes todos los puestos; un nombre se quita solo cuando vence su plazo.',
  'name-was-removed': 'El nombre de «{code}» ya se quitó. Una persona que vuelve recibe un código nuevo.',
  'role-already-held': '«{code}» ya tiene este puesto. No hay que hacer nada.',
  'role-not-held': '«{code}» no tiene este puesto. Mirar otra vez la persona.',
  'last-administrator': '«{code}» es el último administrador. Dar antes ese puesto a otra persona.',
  'device-code-taken':
    'Ya hay un dispositivo llamado «{code}». Elegir otro código, o dar a ese dispositivo una credencial nueva.',
  'device-not-known-any-more': 'El dispositivo «{code}» ya no tiene credencial. No hay que hacer nada.',

  'first-site': 'Esta base de datos estaba vacía. Se ha añadido la planta «{name}» ({code}, zona horaria {timeZone}).',
  'first-site-by-default':
    'No está configurado, y se toma como figura aquí: {settings}. Sus números son los de demostración de GS1: ninguna etiqueta hecha con ellos puede salir de la planta. Para empezar con los propios, parar ahora, configurarlos (docs/settings.md) y arrancar con una base de datos vacía.',
  'first-administrator':
    'Iniciar sesión como «{code}» con la contraseña de un solo uso {password}. Se muestra solo esta vez; la propia se elige enseguida.',
  'first-site-not-set': 'No se puede añadir la primera planta. {setting}: {detail}',

  'sign-in': 'Entrar',
  'sign-in-title': 'Iniciar sesión',
  'sign-in-on-device': 'Este es el dispositivo compartido {code}. Salir al pasarlo a otra persona.',
  'sign-in-by-badge': 'Con tarjeta',
  'sign-in-by-pin': 'Con PIN',
  'sign-in-by-password': 'Con código y contraseña',
  'choose-yourself': 'Elegir el nombre propio',
  'badge-hint': 'Escanearla aquí.',
  'pin-hint': 'De 4 a 8 cifras',
  'language-in-itself': 'Español',
  'own-page-title': 'Página propia',
  'own-language': 'Idioma',
  'own-language-label': 'El idioma de las páginas, en todos los dispositivos',
  'set-own-language': 'Usar este idioma',
  'own-language-set': 'Desde ahora las páginas están en español.',
  'change-password-title': 'Contraseña y PIN',
  'one-time-password-says':
    'Se ha entrado con una contraseña de un solo uso. Elegir una propia; después se puede seguir.',
  'new-password': 'Una contraseña nueva',
  'new-password-hint': 'Al menos 10 caracteres, sin el código propio. Unas cuantas palabras van bien.',
  'change-password': 'Cambiar la contraseña',
  'new-pin': 'Un PIN para las tabletas compartidas',
  'new-pin-hint': 'De 4 a 8 cifras; no una cifra repetida ni una serie seguida',
  'set-pin': 'Guardar el PIN',
  'people-field-code': 'Código',
  'people-field-password': 'Contraseña',
  'people-field-oldPassword': 'Contraseña actual',
  'people-field-newPassword': 'Contraseña nueva',
  'people-field-badge': 'Tarjeta',
  'people-field-person': 'Persona',
  'people-field-pin': 'PIN',
  'people-field-proof': 'Modo de iniciar sesión',
  'people-field-name': 'Nombre',
  'people-field-kind': 'Clase',

  'people-title': 'Personas',
  'people-says':
    'Los nombres figuran solo aquí; los registros llevan códigos e identificadores. Los administradores añaden personas y dan puestos.',
  'people-caption': 'Personas, la más reciente primero',
  'people-roles': 'Puestos',
  'people-language': 'Idioma',
  'people-proofs': 'Entra con',
  'all-people': 'Todas las personas',
  'name-removed': 'nombre quitado',
  'no-roles': 'ninguno',
  'no-proofs': 'todavía nada',
  'proof-password': 'contraseña',
  'proof-pin': 'PIN',
  'proof-badge': 'tarjeta',
  'role-dryer-operator': 'operador de secado',
  'role-line-lead': 'jefe de línea',
  'role-loader': 'cargador',
  'role-lab-analyst': 'analista de laboratorio',
  'role-quality-officer': 'responsable de calidad',
  'role-dispatch-clerk': 'encargado de expedición',
  'role-plant-manager': 'director de planta',
  'role-auditor': 'auditor',
  'role-administrator': 'administrador',
  'role-device': 'dispositivo',

  'devices-title': 'Dispositivos',
  'devices-caption': 'Dispositivos, el más reciente primero',
  'device-code': 'Código del dispositivo',
  'device-code-hint': 'Como tablet-line-1: el nombre que lleva en los registros',
  'device-token-since': 'Conocido desde',
  'device-withdrawn': 'retirado',
  'device-shared-tablet': 'tableta compartida',
  'device-handheld': 'terminal de mano',
  'device-desk': 'ordenador de oficina',
  'device-machine': 'máquina',
  'enrol-this-device': 'Dar de alta este dispositivo',
  'enrol-says': 'Hacerlo en el propio dispositivo. Desde entonces se lo conoce por una cookie; salir después.',
});
