import { addSentences } from '../../platform/sentences/sentences.js';

addSentences('en', {
  'weight-messages': 'weights by MQTT',
  'form-weight-message': 'letters, digits, points, colons, underscores or hyphens, 64 at most',
  'mqtt-weigher-unknown':
    'Weights came by MQTT on the topic of a weigher {named}, and no pack weigher is called so. Nothing of it was taken. Give the weigher in the topic the code that it has here, or set it up.',
  'mqtt-not-allowed':
    'Weights of weigher {weigher} came by MQTT, which it may not send by. Nothing of it was taken. If they are its own, allow it on the page of the weigher; else look who sends.',
  'weight-message-refused':
    'Weights of weigher {weigher} that came by MQTT were refused, the first of them because: {=reason} Each line in error was told to the weigher on its topic of answers. See that the weights are sent again, or write down why they are missing.',
  'check-message-refused':
    'A check that weigher {weigher} made itself and sent by MQTT was refused: {=reason} Why was told to the weigher on its topic of answers. See that it is sent again, or make the check by hand.',
  'check-message-too-large':
    'The message has {length} bytes; a check takes {most} at most. Nothing of this one was taken.',
  'check-not-json': 'The message is no JSON object. Send one check in one message, as the route for checks takes it.',
  'weight-message-kept':
    'Weigher {weigher} has the broker keep (retain) its messages of weights. Only the last is kept, and it comes again at each new subscription; it counted once. Switch retain off at the weigher.',
  'mqtt-broker-away':
    'Since {since} no weights can come by MQTT: the broker {host} is not reached, or refuses. Look whether it runs, and at its address and password in the settings. What the weighers send meanwhile waits with the broker, if it is up.',
  'message-too-large':
    'The message has {length} bytes; {most} are taken at most. Send fewer weights in one message; nothing of this one was taken.',
  'message-empty': 'The message holds no line of a weight. Send one line for each pack, the last one ended too.',
  'message-of-other-type':
    'The message is of type {type}. Send application/x-ndjson or text/csv, or leave the type out: then the first byte tells.',
});
