import type { CalcAnswer } from '@rotorwright/calculations';
import { showQuantity } from '@rotorwright/units';
import { inputOf, outputOf } from './numbers.ts';

/** What a letter scale and a rule tell apart: a tenth of a gram, a tenth of a millimetre of a blade. Our own choice. */
const leastMass = 1e-4;
const leastMoment = 2e-5;

const grams = (mass: number): string => showQuantity(mass, 'g', { significant: 3 });
const mm = (length: number): string => showQuantity(length, 'mm', { significant: 4 });

/** What evens two blades, step by step, from the answer of blade-match; one line that says so where nothing is left to do. */
export function bladeOrder(inputs: Readonly<Record<string, unknown>>, answered: CalcAnswer): readonly string[] {
  const read = (name: string): number => inputOf(inputs, name);
  const found = (name: string): number => outputOf(answered, name) ?? 0;
  const lines: string[] = [];
  const lead = read('tipLead');
  if (Math.abs(lead) > leastMass) lines.push(`Set the edges in line: the tip of blade ${lead > 0 ? 1 : 2} stands ${mm(Math.abs(lead))} ahead.`);
  const [difference, moment] = [found('massDifference'), found('momentDifference')];
  const lighter = difference > 0 ? 2 : 1;
  const onePlace = outputOf(answered, 'onePlace');
  const [bolt, tape] = [read('boltRadius'), read('tapeRadius')];
  if (Math.abs(difference) >= leastMass && onePlace !== undefined && onePlace > bolt && onePlace <= tape) lines.push(`Tape ${grams(Math.abs(difference))} on blade ${lighter}, ${mm(onePlace)} from the rotor axis: that evens masses and moments at once.`);
  else {
    const centres = [read('centre1'), read('centre2')] as const;
    if (Math.abs(difference) >= leastMass) lines.push(`Tape ${grams(Math.abs(difference))} on blade ${lighter}, at its own centre, ${mm(centres[lighter - 1]!)} from the rotor axis: that evens the masses.`);
    // With masses even, what is left is the heavier mass times the distance of the centres.
    const left = Math.abs(difference) >= leastMass ? Math.max(read('mass1'), read('mass2')) * (centres[0] - centres[1]) : moment;
    if (Math.abs(left) >= leastMoment) lines.push(`${lines.length > 0 ? 'Then tape' : 'Tape'} ${grams(Math.abs(left) / tape)} on blade ${left > 0 ? 2 : 1}, ${mm(tape)} from the rotor axis: that evens the moments.`);
  }
  const across = found('chordDifference') - (Math.abs(lead) > leastMass ? leadPart(inputs) : 0);
  if (Math.abs(across) >= leastMoment) lines.push(`The centre of blade ${across > 0 ? 1 : 2} lies further ahead, by ${showQuantity(Math.abs(across), 'g·mm', { significant: 3 })}: put its tape, or that of the other, so far behind or ahead of the feathering axis.`);
  if (lines.length === 0) return ['The pair is even, as far as scale and rule can tell: track next.'];
  return [...lines, `Until then ${showQuantity(found('force'), 'N', { significant: 3 })} shake the head once a turn. Measure again before you fly.`];
}

/** The share of the leading tip in what differs across the blades. */
function leadPart(inputs: Readonly<Record<string, unknown>>): number {
  const read = (name: string): number => inputOf(inputs, name);
  return (read('mass1') * read('tipLead') * (read('centre1') - read('boltRadius'))) / (read('tipRadius') - read('boltRadius'));
}
