const { default: Sequencer } = require('@jest/test-sequencer');

/**
 * What takes minutes, longest first: begun last, it would keep one worker busy while the other has nothing left. The two
 * walks through every page stand apart, since the second goes where the first has been.
 */
const long = [
  'test/browser/every-page-spanish',
  'test/weights-power-cut',
  'test/browser/forty-entries',
  'test/browser/every-page-english',
  'test/browser/languages',
  'test/',
];

const placeOf = ({ path, context }) => {
  const name = path.slice(context.config.rootDir.length + 1);
  const place = long.findIndex((begin) => name.startsWith(begin));
  return place < 0 ? long.length : place;
};

/** Within one place, in Jest's own order: what failed last, what took long last time, else the larger file. */
class LongFirst extends Sequencer {
  sort(tests) {
    return super.sort(tests).sort((one, other) => placeOf(one) - placeOf(other));
  }
}

module.exports = LongFirst;
