import { capScrewSeat, metricThread, propertyClasses, type HeadSeat, type Thread } from '@rotorwright/mechanics';
import { CalculationError } from '../define.ts';
import { refusing } from '../refuse.ts';

export const sizeInput = (example: string) => ({ kind: 'text', title: 'Size of the thread, such as M3 or M4x0.5', example }) as const;
export const classInput = { kind: 'choice', title: 'Property class of the screw', choices: propertyClasses, example: '8.8' } as const;

const frictionInput = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, max: 2, example: 0.12 }) as const;
const seatInput = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', above: 0, optional: true }) as const;

export const frictionInputs = {
  threadFriction: frictionInput('Friction in the thread, with its grease or its wet threadlocker', '\\mu_G'),
  headFriction: frictionInput('Friction under the head', '\\mu_K'),
} as const;

export const seatInputs = {
  headDiameter: seatInput('Diameter on which the head bears; that of a socket cap screw when not given', 'd_w'),
  holeDiameter: seatInput('Diameter of the hole under the head; the medium clearance hole when not given', 'd_h'),
} as const;

export const frictionValidity = [
  'Friction decides: 0.10 oiled, 0.12 to 0.14 as delivered, 0.2 and more for dry stainless (VDI 2230-1, table A5, from memory). A wet threadlocker acts as a light oil while it is tightened; what its maker’s paper gives goes before these (common practice, no source).',
] as const;

/** The thread of a size, or a refusal that names the input. */
export const threadOf = (size: string): Thread => refusing('size', `"${size}"`, () => metricThread(size));

/** What the head bears on: as given, else a socket cap screw over a medium hole. */
export function seatOf(thread: Thread, { headDiameter, holeDiameter }: Partial<HeadSeat>): HeadSeat {
  const usual = capScrewSeat(thread);
  const head = headDiameter ?? usual?.headDiameter;
  const hole = holeDiameter ?? usual?.holeDiameter;
  const unknown = (what: string): string => `${what} in m or mm: there is no socket cap screw of ${thread.designation} to take it from`;
  if (head === undefined) throw new CalculationError('headDiameter', 'nothing', unknown('the diameter on which the head bears'));
  if (hole === undefined) throw new CalculationError('holeDiameter', 'nothing', unknown('the diameter of the hole'));
  if (head <= hole) throw new CalculationError('headDiameter', `${head} m`, `more than the hole of ${hole} m`);
  return { headDiameter: head, holeDiameter: hole };
}
