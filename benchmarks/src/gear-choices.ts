/** How long 10,000 combinations of gears take, with bands and a limit, from the machine to the ranked list. One line of JSON. */
import { gearChoices } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';

const ten = (from: number): string => `[${Array.from({ length: 10 }, (_, index) => from + index).join(', ')}]`;
const { machine } = readMachine(`
rotorwright: 1
machine: {name: Many gears, invented: true}
power: {engine: {on: crank, speed: 14000 rpm, turns: counter-clockwise from above}}
shafts: {crank: {axis: up}, mast: {axis: up}, tail-input: {axis: up}, tail: {axis: left}}
drive:
  main: {kind: external, module: 1 mm, centre: 60 to 70 mm, driver: {on: crank, teeth: 14, choices: ${ten(12)}}, driven: {on: mast, teeth: 112, choices: ${ten(108)}}}
  second: {kind: external, module: 1 mm, centre: 25 to 31 mm, driver: {on: mast, teeth: 44, choices: ${ten(40)}}, driven: {on: tail-input, teeth: 12, choices: ${ten(8)}}}
  bevel: {kind: bevel, driver: {on: tail-input, teeth: 18, lies: up}, driven: {on: tail, teeth: 20, lies: left}}
rotors:
  main: {on: mast, blades: 2, diameter: 1500 mm, wanted: 1700 to 1800 rpm}
  tail: {on: tail, blades: 2, diameter: 260 mm, wanted: 5500 to 6500 rpm}
limits:
  tip: {of: tip-speed main, at-most: 150 m/s}
`);
if (!machine) throw new Error('the machine is refused');

// The first run is measured: it is the one that a person waits for.
const start = performance.now();
const { count, options, excluded } = gearChoices(machine);
const ms = performance.now() - start;
if (options.length === 0 || excluded <= 0 || excluded >= count) throw new Error('the combinations were not ranked');
console.log(JSON.stringify({ name: 'gear-choices', combinations: count, ms: Number(ms.toFixed(1)) }));
