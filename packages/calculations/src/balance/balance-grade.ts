import { CalculationError, defineCalculation } from '../define.ts';
import { lengthInput, speedInput } from '../specs.ts';
import { massOutput } from './balance-specs.ts';

/** What a rotor is, and the grade that its kind usually gets, m/s. */
const usualGrades = {
  'truck engine crank drives': 0.04,
  'agricultural parts': 0.016,
  'fans, pump impellers, armatures, process machinery': 0.0063,
  'machine-tool drives, turbo compressors, small armatures': 0.0025,
  'grinding drives, turbochargers': 0.001,
  'gyros, precision spindles': 0.0004,
} as const;

const kinds = Object.keys(usualGrades) as (keyof typeof usualGrades)[];

export const balanceGrade = defineCalculation({
  id: 'balance-grade',
  title: 'Permissible unbalance',
  section: 'Balance and vibration',
  summary: 'How much unbalance a balance quality grade leaves to a rotor at its speed.',
  inputs: {
    grade: { kind: 'number', title: 'Balance quality grade; that of the kind when not given', symbol: 'G', unit: 'm/s', shown: 'mm/s', above: 0, optional: true, example: 0.0063 },
    kind: { kind: 'choice', title: 'Kind of rotor, for its usual grade', choices: kinds, optional: true },
    speed: { ...speedInput('Highest speed in service', 'n', 1760), above: 0 },
    mass: { kind: 'number', title: 'Mass of the rotor', symbol: 'm', unit: 'kg', shown: 'kg', above: 0, example: 0.8 },
    radius: { ...lengthInput('Radius at which correction masses go', 'r', 32), optional: true },
  },
  outputs: {
    permissibleUnbalance: { title: 'Permissible unbalance', symbol: 'U_\\mathrm{per}', unit: 'kg·m', shown: 'g·mm' },
    specificUnbalance: { title: 'Permissible offset of the centre of mass', symbol: 'e_\\mathrm{per}', unit: 'm', shown: 'µm' },
    grade: { title: 'Balance quality grade', symbol: 'G', unit: 'm/s', shown: 'mm/s' },
    permissibleMass: massOutput('Mass at that radius that may be left', 'm_\\mathrm{per}'),
    force: { title: 'Force that the permissible unbalance makes', symbol: 'F', unit: 'N', shown: 'N' },
  },
  formulas: [
    { output: 'grade', tex: String.raw`G` },
    { output: 'specificUnbalance', tex: String.raw`e_\mathrm{per} = \frac{G}{\omega}` },
    { output: 'permissibleUnbalance', tex: String.raw`U_\mathrm{per} = m\,e_\mathrm{per}` },
    { output: 'permissibleMass', tex: String.raw`m_\mathrm{per} = \frac{U_\mathrm{per}}{r}` },
    { output: 'force', tex: String.raw`F = U_\mathrm{per}\,\omega^2` },
  ],
  source: 'ISO 21940-11: specific unbalance e = G/ω, and the usual grades (read in public files that quote it).',
  validity: ['A rigid rotor. With two correction planes the unbalance is shared between them.'],
  compute: ({ kind, speed, mass, radius, ...given }) => {
    const grade = given.grade ?? (kind === undefined ? undefined : usualGrades[kind]);
    if (grade === undefined) throw new CalculationError('grade', 'nothing', 'the balance quality grade, or the kind of rotor');
    const permissibleUnbalance = (mass * grade) / speed;
    return {
      outputs: { permissibleUnbalance, specificUnbalance: grade / speed, grade, ...(radius === undefined ? {} : { permissibleMass: permissibleUnbalance / radius }), force: mass * grade * speed },
      warnings: radius === undefined ? ['permissibleMass is left out: no radius is given.'] : [],
    };
  },
});
