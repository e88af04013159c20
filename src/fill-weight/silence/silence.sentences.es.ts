import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('es', {
  'weigher-silence': 'silencio de una pesadora de paquetes',
  'weigher-silent':
    'Línea {line}, corrida {run}: sin pesos de {weigher} desde {at}, y {count?se contó|se contaron} {count} {count?paquete|paquetes} que nadie pesó. Ver si la pesadora está encendida y envía; hasta entonces, pesar muestras a mano.',
  'verified-all': 'Todos los paquetes contados se pesaron: {counted}.',
  'verified-some':
    'De {counted} {counted?paquete contado|paquetes contados}, {verified} {verified?está verificado|están verificados} por peso y {count} sin verificar.',
  'unverified-do':
    '{count} {count?paquete contado no se pesó|paquetes contados no se pesaron}. El veredicto no trata de {count?él|ellos}: hacer que la pesadora envíe lo que guardó, pesar a mano una muestra de lo que aún está aquí, o que decida calidad.',
  'unverified-may-be-more':
    '{count} {count?paquete se retiró|paquetes se retiraron} a mano. Si se habían pesado antes y no están en el recuento, otros tantos pueden estar sin verificar.',
  'silences-caption': 'Cuándo no llegaron pesos mientras se contaban paquetes',
  'silence-weigher': 'Pesadora',
  'silence-since': 'Último peso',
  'silence-until': 'Hasta',
  'silence-counted': 'Paquetes contados',
  'silence-weighed': 'Pesados ya',
  'silence-unverified': 'Sin verificar',
  'silence-lasts': 'sigue en silencio',
  'silence-come': 'ninguno: los pesos llegaron tarde',
  'silences-say':
    'Los recuentos van del último antes del silencio al primero después de él. Los pesos que llegan tarde cuentan.',
});
