import type { FormKind } from './form-kinds.js';

/** The words of a sheet in one language. Those of an edition stay as they are for ever. */
export interface FormWords {
  readonly titles: Readonly<Record<FormKind, string>>;
  readonly sheet: string;
  readonly printed: string;
  readonly begins: string;
  readonly shift: string;
  readonly how: string;
  readonly rules: Readonly<Record<FormKind, string>>;
  readonly cautions: Readonly<Record<FormKind, string>>;
  readonly columns: Readonly<Record<FormKind, readonly string[]>>;
  readonly ticks: Readonly<Record<'whole' | 'part' | 'reject' | 'sample' | 'sweepings', string>>;
  readonly twoPeople: string;
  /** What is written of a check that names no pieces. */
  readonly wholeChecks: Readonly<Record<'printed-code' | 'torn-bag' | 'other', string>>;
  readonly scan: string;
  readonly page: string;
  readonly foot: string;
  readonly card: Readonly<
    Record<'title' | 'row' | 'product' | 'packs' | 'code' | 'built' | 'cut' | 'state' | 'caution', string>
  >;
}

export const englishWords: FormWords = {
  titles: {
    tips: 'BAGS TIPPED',
    pallets: 'PALLETS BUILT',
    stops: 'STOPS',
    counts: 'PACKS COUNTED',
    removals: 'REJECTS, SAMPLES, SWEEPINGS',
    checks: 'LINE CHECKS',
  },
  sheet: 'Sheet',
  printed: 'printed',
  begins: 'Day on which this sheet begins',
  shift: 'Shift',
  how: 'For when the server cannot be reached. Write at once, in ink, one row each, with the time of the clock on the wall. Strike a wrong row through with one line so that it stays readable, and take the next. Every row is keyed in later with the time written here.',
  rules: {
    tips: 'Bag number with its letter as on the label. Look for a hold tag before tipping. Part: weigh the bag back and write gross and tare.',
    pallets:
      'Stick the card of the row on that pallet and no other. A spoilt card: write SPOILT in its row; its number is never used again.',
    stops: 'Write the stop when it begins; the second time when the line runs again.',
    counts:
      'The line’s counter of accepted packs since the start of the run. Loose: accepted packs on belts and tables, at handover.',
    removals: 'Net weight and scale, or whole packs. Sweepings and metal rejects are never rework.',
    checks:
      'Write the letter of the check and, under the number of each piece, a tick where it passed or a cross where it did not. A cross: stop the line, write what was done at once, set aside all since the last good check, call quality. Two people: both write their names.',
  },
  cautions: {
    tips: 'CAUTION: nobody under or beside a hanging bag; all loops, never above its safe load. Keep flames and sparks away: sugar dust explodes. Local rules go first.',
    pallets:
      'CAUTION: keep clear of trucks and forks; two people or a lifting aid for heavy layers. Local rules go first.',
    stops:
      'CAUTION: lock the machine out and try it before a hand goes in. Jaws are hot, blades are sharp. Local rules go first.',
    counts: 'CAUTION: read the counter from where you stand safely; nothing is reached into. Local rules go first.',
    removals:
      'CAUTION: lock the machine out before cleaning; no compressed air on sugar dust, it explodes. Local rules go first.',
    checks:
      'CAUTION: no hand into a running machine; lock it out before a sieve or magnet is opened. Count the test pieces back: none stays in the product. Local rules go first.',
  },
  columns: {
    tips: ['bag number', 'opened at', 'off at', 'whole or part', 'gross kg', 'tare kg', 'scale', 'written by'],
    pallets: ['', 'number set aside (SSCC)', 'full at', 'packs', 'code on the packs', 'written by'],
    stops: ['stopped at', 'ran again at', 'why', 'counter', 'written by'],
    counts: ['read at', 'counter', 'loose packs', 'what for', 'written by'],
    removals: ['taken at', 'what', 'net kg', 'or packs', 'scale', 'why', 'goes to', 'written by'],
    checks: [
      'checked at',
      'letter',
      'pieces: tick or cross',
      'shown g, code read or bag',
      'done at once',
      'counter',
      'written by, seen by',
    ],
  },
  ticks: {
    whole: 'whole',
    part: 'part',
    reject: 'reject',
    sample: 'sample',
    sweepings: 'swept',
  },
  twoPeople: 'two people',
  wholeChecks: {
    'printed-code': 'Read the code off a pack and write it down letter by letter.',
    'torn-bag': 'Write the number of the bag; box 1: a cross where it is torn or its seal is broken.',
    other: 'Box 1: a tick or a cross.',
  },
  scan: 'scan to key in',
  page: 'page',
  foot: 'Keep the written sheet: it is the first record.',
  card: {
    title: 'PALLET',
    row: 'row',
    product: 'Product',
    packs: 'Packs',
    code: 'Code on the packs',
    built: 'Full on, at',
    cut: 'Cut out; stick on the pallet of this row only.',
    state: 'This card promises no state: look the pallet up before use.',
    caution: 'Keep clear of trucks and forks.',
  },
};

export const spanishWords: FormWords = {
  titles: {
    tips: 'BIG BAGS VACIADOS',
    pallets: 'PALÉS FORMADOS',
    stops: 'PARADAS',
    counts: 'PAQUETES CONTADOS',
    removals: 'RECHAZOS, MUESTRAS, BARREDURAS',
    checks: 'CONTROLES DE LÍNEA',
  },
  sheet: 'Hoja',
  printed: 'impresa',
  begins: 'Día en que empieza esta hoja',
  shift: 'Turno',
  how: 'Para cuando no se llega al servidor. Escribir en el momento, con tinta, una fila cada cosa, con la hora del reloj de pared. Una fila equivocada se tacha con una sola línea, que se pueda leer, y se toma la siguiente. Cada fila se pasa después con la hora escrita aquí.',
  rules: {
    tips: 'Número del big bag con su letra, como en la etiqueta. Mirar si lleva marca de retención antes de vaciar. Parte: volver a pesar y escribir bruto y tara.',
    pallets:
      'Pegar la tarjeta de la fila en ese palé y en ningún otro. Tarjeta estropeada: escribir NULA en su fila; su número no se usa nunca más.',
    stops: 'Escribir la parada cuando empieza; la segunda hora, cuando la línea vuelve a andar.',
    counts:
      'El contador de paquetes aceptados de la línea desde el inicio de la corrida. Sueltos: paquetes aceptados en cintas y mesas, al relevo.',
    removals: 'Peso neto y báscula, o paquetes enteros. Barreduras y rechazos por metal no se reprocesan nunca.',
    checks:
      'Escribir la letra del control y, bajo el número de cada pieza, una marca si se superó o una cruz si no. Una cruz: parar la línea, escribir qué se hizo en el momento, apartar todo desde el último control bueno, llamar a calidad. Dos personas: las dos escriben su nombre.',
  },
  cautions: {
    tips: 'PRECAUCIÓN: nadie debajo ni al lado de un big bag colgado; todas las asas, nunca por encima de su carga segura. Sin llamas ni chispas: el polvo de azúcar explota. Las normas locales van primero.',
    pallets:
      'PRECAUCIÓN: lejos de carretillas y horquillas; dos personas o ayuda mecánica para capas pesadas. Las normas locales van primero.',
    stops:
      'PRECAUCIÓN: bloquear la máquina y probarla antes de meter la mano. Mordazas calientes, cuchillas afiladas. Las normas locales van primero.',
    counts: 'PRECAUCIÓN: leer el contador desde un lugar seguro; no se mete la mano. Las normas locales van primero.',
    removals:
      'PRECAUCIÓN: bloquear la máquina antes de limpiar; sin aire comprimido sobre polvo de azúcar, explota. Las normas locales van primero.',
    checks:
      'PRECAUCIÓN: ninguna mano en una máquina en marcha; bloquearla antes de abrir un tamiz o un imán. Contar las piezas de prueba a la vuelta: ninguna queda en el producto. Las normas locales van primero.',
  },
  columns: {
    tips: ['número', 'abierto a las', 'fuera a las', 'entero o parte', 'bruto kg', 'tara kg', 'báscula', 'escrito por'],
    pallets: ['', 'número apartado (SSCC)', 'lleno a las', 'paquetes', 'código en los paquetes', 'escrito por'],
    stops: ['parada a las', 'anda a las', 'por qué', 'contador', 'escrito por'],
    counts: ['leído a las', 'contador', 'sueltos', 'para qué', 'escrito por'],
    removals: ['a las', 'qué', 'neto kg', 'o paquetes', 'báscula', 'por qué', 'va a', 'escrito por'],
    checks: [
      'a las',
      'letra',
      'piezas: marca o cruz',
      'indicado g, código o big bag',
      'hecho en el momento',
      'contador',
      'escrito por, visto por',
    ],
  },
  ticks: {
    whole: 'entero',
    part: 'parte',
    reject: 'rechazo',
    sample: 'muestra',
    sweepings: 'barrido',
  },
  twoPeople: 'dos personas',
  wholeChecks: {
    'printed-code': 'Leer el código de un paquete y escribirlo letra por letra.',
    'torn-bag': 'Escribir el número del big bag; casilla 1: una cruz si está roto o su precinto abierto.',
    other: 'Casilla 1: una marca o una cruz.',
  },
  scan: 'leer para pasarla',
  page: 'página',
  foot: 'Guardar la hoja escrita: es el primer registro.',
  card: {
    title: 'PALÉ',
    row: 'fila',
    product: 'Producto',
    packs: 'Paquetes',
    code: 'Código en los paquetes',
    built: 'Lleno el día, a las',
    cut: 'Recortar; pegar solo en el palé de esta fila.',
    state: 'Esta tarjeta no promete ningún estado: consultar el palé antes de usarlo.',
    caution: 'Lejos de carretillas y horquillas.',
  },
};
