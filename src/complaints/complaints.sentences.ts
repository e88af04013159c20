import { addSentences } from '../platform/sentences/sentences.js';

addSentences('en', {
  complaint: 'complaint',
  'complaint-step': 'entry of a complaint',
  'complaint-closed': 'Complaint {complaint} is closed. Reopen it with its reason first.',
  'complaint-not-closed': 'Complaint {complaint} is not closed, so there is nothing to reopen. Go on with it as it is.',
  'complaint-without-cause':
    'No cause of complaint {complaint} is recorded. Record it, or that none was found; then close it.',
  'complaint-not-answered':
    'Nobody has answered complaint {complaint} yet. Answer the customer, or say why nobody can be answered; then close it.',
  'complaint-withdrawn':
    'Complaint {complaint} was withdrawn. It can be read; take in a new one if there is more to it.',
  'complaint-moved-on':
    'Somebody else has just changed complaint {complaint}. Open it again, look at what changed and decide then.',
  'complaint-class-unchanged': 'Complaint {complaint} is of this category and severity already. Choose another.',
  'complaint-contact-gone': 'Nobody’s name is kept with complaint {complaint}. There is nothing to remove.',
  'contact-without-name': 'A telephone number or address needs a name with it. Enter who it is, or leave both out.',
  'complaint-food-safety':
    'Complaint {complaint} may be about the safety of food. Look into it now: see what its packs share, and decide whether to hold.',
  'complaint-came-in': 'Complaint {complaint} came in. Look into it, find the cause and answer the customer.',
  'cause-complaint-food-safety': 'A complaint about the safety of food',
  'complaint-is-open': 'open',
  'complaint-is-looking-into': 'looked into',
  'complaint-is-answered': 'answered',
  'complaint-is-closed': 'closed',
  'complaint-is-reopened': 'reopened',
  'complaint-is-withdrawn': 'withdrawn',
  'complaint-about-foreign-body': 'foreign body',
  'complaint-about-insects': 'insects',
  'complaint-about-illness': 'illness',
  'complaint-about-odour-taste': 'odour or taste',
  'complaint-about-colour': 'colour',
  'complaint-about-lumps': 'lumps',
  'complaint-about-short-weight': 'short weight',
  'complaint-about-damaged-pack': 'damaged pack',
  'complaint-about-wrong-code': 'code or label wrong',
  'complaint-about-other': 'something else',
  'severity-food-safety': 'safety of food',
  'severity-not-as-sold': 'not as sold',
  'severity-nuisance': 'nuisance',
  'complaint-named': 'Complaint {complaint}',
});
