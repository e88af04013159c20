/** What the band says of the last scan or entry. */
export interface BandText {
  readonly word: string;
  readonly sentence: string;
  readonly tone: 'quiet' | 'attention' | 'must-not';
  readonly digits?: string;
  /** What may be done with it. */
  readonly act?: HTMLElement | null;
}

const flashMilliseconds = 1200;

/** Says something in the band, as the server would; where the page has none, above its content. */
export function showBand({ word, sentence, tone, digits, act }: BandText): void {
  const said = document.querySelector<HTMLElement>('#band .said') ?? ownPlace();
  const band = document.getElementById('band');
  if (band !== null) {
    band.classList.remove('quiet', 'attention', 'must-not');
    band.classList.add(tone);
    band.querySelector('.acts')?.replaceChildren(...(act === undefined || act === null ? [] : [act]));
  }
  const big = document.createElement('p');
  big.className = 'word';
  big.textContent = word;
  if (digits !== undefined) {
    const last = document.createElement('span');
    last.className = 'digits';
    last.textContent = ` ${digits}`;
    big.append(last);
  }
  const small = document.createElement('p');
  small.textContent = sentence;
  said.replaceChildren(big, small);
  flash();
}

/** A scan is seen from two metres away: the band changes for a moment, and stays with what it said. */
export function flash(): void {
  const band = document.getElementById('band');
  if (band === null) return;
  band.classList.add('flash');
  setTimeout(() => {
    document.getElementById('band')?.classList.remove('flash');
  }, flashMilliseconds);
}

function ownPlace(): HTMLElement {
  const known = document.getElementById('said-here');
  if (known !== null) return known;
  const place = document.createElement('div');
  place.id = 'said-here';
  place.className = 'said-before';
  place.setAttribute('role', 'status');
  document.getElementById('content')?.prepend(place);
  return place;
}
