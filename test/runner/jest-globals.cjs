const globalsKey = Symbol.for('packthread.jest-globals');

/** Modules are loaded once a process, each test file has its own `describe` and `expect`: so they are looked up when used. */
const ofThisFile = (name) =>
  new Proxy(() => undefined, {
    get: (_, key) => Reflect.get(globalThis[globalsKey][name], key),
    apply: (_, self, given) => Reflect.apply(globalThis[globalsKey][name], self, given),
  });

exports.afterAll = ofThisFile('afterAll');
exports.afterEach = ofThisFile('afterEach');
exports.beforeAll = ofThisFile('beforeAll');
exports.beforeEach = ofThisFile('beforeEach');
exports.describe = ofThisFile('describe');
exports.expect = ofThisFile('expect');
exports.it = ofThisFile('it');
exports.jest = ofThisFile('jest');
