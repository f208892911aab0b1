import data from '../data/shaft-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';
import type { Check } from './check.ts';
import { sourced, type Row } from './rows.ts';

/** A beam with EI, mass per length and length 1 bends at f = (βl)²/2π. */
const frequency = (eigenvalue: number): number => eigenvalue ** 2 / (2 * Math.PI);
const unit = { length: 1, bendingStiffness: 1, massPerLength: 1 };

const clamped = { kind: 'clamped' } as const;
const pinned = { kind: 'pinned' } as const;
const thomson = [
  ['cantilever', [{ at: 0, ...clamped }], [1.8751, 4.6941, 7.8548]],
  ['clamped at both ends', [{ at: 0, ...clamped }, { at: 1, ...clamped }], [4.73, 7.8532, 10.9956]],
  ['free at both ends', [], [4.73, 7.8532, 10.9956]],
] as const;
const tabled = sourced(
  { document: 'Thomson, Theory of Vibration', place: 'table 9.5-1 and appendix D, βl to four or five figures', kind: 'published' },
  thomson.flatMap(([title, supports, roots]): Row[] => [
    [`eigenvalues: ${title}`, 'beam-modes', { ...unit, supports, modes: 3 }, 'frequencies', roots.map(frequency), 7e-5, 'relative'],
    ...(['firstFrequency', 'secondFrequency', 'thirdFrequency'] as const).map((output, index): Row => [`eigenvalue ${index + 1}: ${title}`, 'beam-modes', { ...unit, supports, modes: 3 }, output, frequency(roots[index]!), 7e-5, 'relative']),
  ]),
);

const pinnedBeam = sourced({ document: 'Bending of a beam on two pins', kind: 'law' }, [
  ['βl = nπ', 'beam-modes', { ...unit, supports: [{ at: 0, ...pinned }, { at: 1, ...pinned }], modes: 4 }, 'frequencies', [1, 2, 3, 4].map((n) => frequency(n * Math.PI)), 1e-5, 'relative'],
]);

const spans = sourced({ document: 'Dynamic three-moment equation of two equal spans on pins', kind: 'independent route' }, [
  ['two spans of 1 m', 'beam-modes', { ...unit, length: 2, supports: [0, 1, 2].map((at) => ({ at, ...pinned })), modes: 4 }, 'frequencies', [Math.PI, 3.926_602, 2 * Math.PI, 7.068_583].map(frequency), 2e-5, 'relative'],
]);

const discs = { inertias: [5, 11, 22], stiffnesses: [1e5, 2e5] };
/** K and J of the example: ω⁴ − ω²(K₁/J₁ + (K₁ + K₂)/J₂ + K₂/J₃) + K₁K₂(J₁ + J₂ + J₃)/(J₁J₂J₃) = 0 */
const sum = 1e5 / 5 + 3e5 / 11 + 2e5 / 22;
const product = (1e5 * 2e5 * 38) / (5 * 11 * 22);
const roots = [-1, 1].map((sign) => Math.sqrt((sum + sign * Math.sqrt(sum ** 2 - 4 * product)) / 2) / (2 * Math.PI));
const torsion = sourced({ document: 'Thomson, Theory of Vibration, example 12.4-1: the system; its frequency equation solved by hand', kind: 'by hand' }, [
  ['three discs, 123.67 and 202.66 rad/s', 'torsion-modes', discs, 'frequencies', roots, 1e-9, 'relative'],
]);

/** Angles of the three discs, the largest 1: K₁(θ₁ − θ₂) = ω²J₁θ₁, and no moment in all: ΣJθ = 0. */
const shapes = roots.map((root) => {
  const second = 1 - ((2 * Math.PI * root) ** 2 * 5) / 1e5;
  const angles = [1, second, -(5 + 11 * second) / 22];
  const largest = angles.reduce((most, angle) => (Math.abs(angle) > Math.abs(most) ? angle : most));
  return angles.map((angle) => angle / largest);
});
const shape = sourced({ document: 'Thomson, Theory of Vibration, example 12.4-1: the system; angles from the first disc’s equation of motion and the angular momentum', kind: 'independent route' }, [
  ['three discs', 'torsion-modes', discs, 'modeShapes', shapes, 1e-9, 'relative'],
]);

const midDisc = { length: 0.5, bendingStiffness: (210e9 * Math.PI * 0.03 ** 4) / 64, massPerLength: 0, supports: [{ at: 0, ...pinned }, { at: 0.5, ...pinned }], masses: [{ at: 0.25, mass: 10 }], speed: 566.242_833_266_236, modes: 1 };
const disc = sourced({ document: 'Question of a public collection: a disc in the middle of a shaft without mass; ω = √(48EI/(m·l³))', kind: 'by hand' }, [
  ['10 kg on 30 mm steel, 500 mm between pins', 'whirl', midDisc, 'firstCriticalRatio', 1, 1e-6, 'relative'],
  ['10 kg on 30 mm steel, 500 mm between pins: 566.24 rad/s', 'whirl', midDisc, 'firstCriticalSpeed', 566.242_833_266_236, 1e-6, 'relative'],
]);

const twoWheels = { length: 1.5, bendingStiffness: (210e9 * Math.PI * (0.05 ** 4 - 0.03 ** 4)) / 64, massPerLength: 0, supports: [{ at: 0, ...pinned }, { at: 1.5, ...pinned }], masses: [{ at: 0.5, mass: 20 }, { at: 1.1, mass: 30 }], modes: 1 };
const energy = sourced({ document: 'Textbook shaft with two wheels: deflections under weight read, Rayleigh’s 1522.5 rpm and Dunkerley’s 1459.1 rpm computed from them', place: 'Rayleigh lies above the true speed, Dunkerley below: their middle, and half the way between', kind: 'published' }, [
  ['hollow shaft with two wheels', 'whirl', { ...twoWheels, speed: (1490.85 * Math.PI) / 30 }, 'firstCriticalRatio', 1, 31.7 / 1490.85, 'absolute'],
]);

const tubeRows = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['π/64 (28⁴ − 26⁴) mm⁴', 'tube', { outer: '28 mm', inner: '26 mm' }, 'secondMoment', (Math.PI / 64) * (0.028 ** 4 - 0.026 ** 4), 1e-12, 'relative'],
  ['twice that about the axis', 'tube', { outer: '28 mm', inner: '26 mm' }, 'polarMoment', (Math.PI / 32) * (0.028 ** 4 - 0.026 ** 4), 1e-12, 'relative'],
  ['27π mm² of 2,700 kg/m³', 'tube', { outer: '28 mm', inner: '26 mm', density: 2700 }, 'massPerLength', 27e-6 * Math.PI * 2700, 1e-12, 'relative'],
  ['70 GPa on it', 'tube', { outer: '28 mm', inner: '26 mm', youngsModulus: '70 GPa' }, 'bendingStiffness', 70e9 * (Math.PI / 64) * (0.028 ** 4 - 0.026 ** 4), 1e-12, 'relative'],
  ['26 GPa on it', 'tube', { outer: '28 mm', inner: '26 mm', shearModulus: '26 GPa' }, 'torsionalStiffnessPerLength', 26e9 * (Math.PI / 32) * (0.028 ** 4 - 0.026 ** 4), 1e-12, 'relative'],
]);

/** Beams, shafts, torsion and masses. */
export const shaftChecks: readonly Check[] = [...checksOf(data as unknown as readonly Case[]), ...tabled, ...pinnedBeam, ...spans, ...torsion, ...shape, ...disc, ...energy, ...tubeRows];
