/** What the tests of packages/mechanics use of vitest, kept as a plain list, so that a test can be run again in microseconds. */
import { ASYMMETRIC_MATCHERS_OBJECT, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from '@vitest/expect';
import * as chai from 'chai';

/** @type {{name: string, work: () => unknown}[]} */
export const collected = [];
const path = [];

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
export const expect = Object.assign((value, message) => chai.expect(value, message), chai.expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);

const eachOf = (one) => (cases) => (name, work) => {
  for (const [index, row] of cases.entries()) one(`${name} #${index + 1}`, () => (Array.isArray(row) ? work(...row) : work(row)));
};

export function describe(name, work) {
  path.push(name);
  work();
  path.pop();
}
describe.each = eachOf(describe);

export function test(name, work) {
  collected.push({ name: [...path, name].join(' > '), work });
}
test.each = eachOf(test);

export function it(name, work) {
  test(name, work);
}
it.each = test.each;
