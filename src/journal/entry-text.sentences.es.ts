import { addSentences } from '../platform/sentences/sentences.js';

addSentences('es', {
  'changed-since': 'Qué ha cambiado desde que se hizo esta página',
  'changed-since-next': 'No se ha registrado nada. Mirar qué ha cambiado; después, decidir de nuevo si sigue valiendo.',
});
