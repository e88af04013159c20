import { addSentences } from '../platform/sentences/sentences.js';

/** Counting, closing, leaving, changing a plan, and what comes back. */
addSentences('en', {
  'returned-unit': 'returned unit',
  'delivery-has-left':
    'Order {order} left with note {note}. Nothing is changed on it; what comes back of it is taken back as a return.',
  'blind-count-missing':
    'Nobody has counted the units of order {order} since the last one went on or came off. Walk round the vehicle, count, and give the count.',
  'blind-count-differs':
    '{counted} counted by walking round is not what was scanned. Walk round once more and count again without looking at a screen.',
  'blind-count-differs-again':
    '{counted} counted twice over, {scanned} scanned. Compare unit by unit with the list: take off by scan what is not there, scan what was not scanned, then count again.',
  'short-words-needed': 'Say in words why less goes than was ordered: the reason “other” alone says nothing.',
  'units-may-not-go':
    '{count} {count?unit|units} may not go: {units}. Take {count?it off by scan and put it|them off by scan and put them} back. The first: {because}',
  'units-may-not-leave':
    '{count} {count?unit|units} may not leave: {units}. Stop the vehicle at the gate. Make the note void, take {count?it|them} off, count and print again. The first: {because}',
  'papers-not-printed':
    'The papers of order {order} are not printed yet. Close the delivery first, then let the vehicle go.',
  'left-before-closing':
    'The papers of order {order} were printed at {closedAt}, after the time given. Correct the time.',
  'less-than-is-on':
    '{on} of {goods} are on the vehicle already, {ordered} would be ordered. Take off what is too much first, or order at least what is on.',
  'units-came-back':
    'Units of order {order} have come back since, so its vehicle did leave. Issue a new version instead.',
  'left-with-unfit-units':
    'The vehicle of order {order} left with units that should have stayed: {units}. Ring the customer and say what to do with them.',
  'not-left-yet':
    'The vehicle of order {order} has not left. Take units off by scan; a return is for what the customer had.',
  'returned-before-leaving': 'The vehicle of order {order} left at {leftAt}, after the time given. Correct the time.',
  'return-words-needed': 'Say in words why it comes back: the reason “other” alone says nothing.',
  'returned-unit-unclear':
    'Name one thing in each row: a whole pallet, a whole bag, or a lot with the number of its loose packs.',
  'came-back-already': '{unit} came back already or is not with the customer. Look it up before you go on.',
  'lot-not-delivered':
    'No pack of lot {lot} went with order {order}. Read the code again, or find the delivery it belongs to.',
  'more-than-delivered':
    'Of lot {lot}, {back} {back?pack|packs} would be back and only {delivered} {delivered?was|were} delivered. Count again, or look at what came back before.',
  'credit-over-returned':
    '{credited} credited of {unit}, of which {count} {count?comes|come} back. Credit no more than that.',
  'same-unit-twice': '{unit} stands in two rows. Put it into one.',
  'return-waits':
    'Units of order {order} came back and stand apart. Look at them and decide: into the stock, or destroyed.',
  'return-decided': 'About {unit} it has been decided already. Open the return again and look.',
  'loose-packs-stay-out':
    'Loose packs of lot {lot} do not go back into the stock: nobody knows where they have been. Have them destroyed.',
  'bag-came-back':
    'Bag {bag} came back from a customer and stands apart. Quality must decide before it is used; take another.',
  'bag-was-destroyed': 'Bag {bag} was destroyed. Read its number again.',
  'short-not-enough-stock': 'not enough in stock',
  'short-on-hold': 'a pallet was put on hold',
  'short-damaged': 'a unit was damaged',
  'short-no-room': 'no room left on the vehicle',
  'short-too-heavy': 'the vehicle would be too heavy',
  'short-customer-wants-less': 'the customer wants less',
  'short-other': 'other, in words',
  'return-refused-by-customer': 'refused by the customer',
  'return-damaged-on-the-way': 'damaged on the way',
  'return-wrong-goods': 'wrong goods',
  'return-too-much': 'more than was ordered',
  'return-complaint': 'after a complaint',
  'return-recalled': 'called back by us',
  'return-other': 'other, in words',
  'fate-restock': 'back into the stock',
  'fate-destroy': 'destroyed',
  'paper-copy': 'COPY',
  'paper-copy-note': '{word}, printed {at} UTC; first print SHA-256 {hash}',
  'pallet-is-returned': 'came back, waits for quality',
  'pallet-is-destroyed': 'destroyed',
  'bag-status-returned': 'came back, waits for quality',
  'bag-status-destroyed': 'destroyed',
});
