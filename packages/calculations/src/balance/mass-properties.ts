import { massProperties as summed, principalMoments, type Body, type Tensor } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';

/** Share of the largest entry by which a tensor may miss symmetry, and a moment the sum of the other two. */
const TOLERANCE = 1e-9;

const inertiaOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'kg·m²', shown: 'kg·m²', list: true }) as const;

export const massProperties = defineCalculation({
  id: 'mass-properties',
  title: 'Mass, centre and inertia',
  section: 'Balance and vibration',
  summary: 'Mass, centre of mass and moments of inertia of a machine from its bodies.',
  inputs: {
    bodies: {
      kind: 'list',
      title: 'Bodies; a negative mass is something taken off',
      atLeast: 1,
      of: {
        kind: 'record',
        title: 'Body',
        fields: {
          mass: { kind: 'number', title: 'Mass', symbol: 'm', unit: 'kg', shown: 'kg', min: -1e6, max: 1e6 },
          position: { kind: 'list', title: 'Centre of mass: x, y, z', atLeast: 3, of: { kind: 'number', title: 'Position', symbol: 'x', unit: 'm', shown: 'mm', min: -1e6, max: 1e6 } },
          inertia: {
            kind: 'list',
            title: 'Inertia about its own centre of mass, three rows; of a negative mass with its minus; none for a point',
            optional: true,
            atLeast: 3,
            of: { kind: 'list', title: 'Row', atLeast: 3, of: { kind: 'number', title: 'Entry', symbol: 'I', unit: 'kg·m²', shown: 'kg·m²', min: -1e15, max: 1e15 } },
          },
        },
      },
      example: [
        { mass: 2.1, position: [0.02, 0.003, -0.06], inertia: [[0.006, 0, -0.0004], [0, 0.011, 0], [-0.0004, 0, 0.009]] },
        { mass: 0.35, position: [-0.92, -0.01, 0.02] },
      ],
    },
  },
  outputs: {
    mass: { title: 'Mass', symbol: 'm', unit: 'kg', shown: 'kg' },
    centre: { title: 'Centre of mass: x, y, z', symbol: 'x_m', unit: 'm', shown: 'mm', list: true },
    inertia: inertiaOutput('Inertia about the centre of mass', 'I'),
    inertiaAtOrigin: inertiaOutput('Inertia about the origin', 'I_0'),
    principal: inertiaOutput('Principal moments, ascending', 'I_{1,2,3}'),
  },
  formulas: [
    { output: 'mass', tex: String.raw`m = \sum m_k` },
    { output: 'centre', tex: String.raw`x_m = \frac{1}{m}\sum m_k\,x_k` },
    { output: 'inertia', tex: String.raw`I = \sum \left[I_k + m_k\left(|d_k|^2\,\mathbf{1} - d_k d_k^\mathsf{T}\right)\right],\quad d_k = x_k - x_m` },
    { output: 'inertiaAtOrigin', tex: String.raw`I_0 = \sum \left[I_k + m_k\left(|x_k|^2\,\mathbf{1} - x_k x_k^\mathsf{T}\right)\right]` },
    { output: 'principal', tex: String.raw`\det\left(I - I_j\,\mathbf{1}\right) = 0` },
  ],
  source: 'Rigid-body mechanics: theorem of parallel axes.',
  validity: ['All axes are parallel. Products enter with their minus: I_xy = −∫xy dm. Fuel and whatever else moves is taken where it is given.'],
  compute: ({ bodies }) => {
    const total = bodies.reduce((sum, { mass }) => sum + mass, 0);
    if (!(total > 0)) throw new CalculationError('bodies', `${total} kg in all`, 'a total mass above 0');
    const { mass, centre, inertia, inertiaAtOrigin, principal } = summed(bodies.map((body, index) => readBody(body, `bodies[${index}]`)));
    return { outputs: { mass, centre, inertia, inertiaAtOrigin, principal }, warnings: [] };
  },
});

interface Given {
  readonly mass: number;
  readonly position: readonly number[];
  readonly inertia?: readonly (readonly number[])[];
}

function readBody({ mass, position, inertia }: Given, path: string): Body {
  const three = <Item>(items: readonly Item[], name: string): readonly [Item, Item, Item] => {
    if (items.length !== 3) throw new CalculationError(name, `${items.length} entries`, 'exactly three');
    return [items[0]!, items[1]!, items[2]!];
  };
  const placed = { mass, position: three(position, `${path}.position`) };
  if (inertia === undefined) return placed;
  const name = `${path}.inertia`;
  const [x, y, z] = three(inertia, name);
  const tensor: Tensor = [three(x, `${name}[0]`), three(y, `${name}[1]`), three(z, `${name}[2]`)];
  checkTensor(tensor, mass, name);
  return { ...placed, inertia: tensor };
}

function checkTensor(tensor: Tensor, mass: number, name: string): void {
  const largest = Math.max(...tensor.flat().map(Math.abs));
  for (const [row, column] of [[0, 1], [0, 2], [1, 2]] as const) {
    const [one, other] = [tensor[row][column], tensor[column][row]];
    if (Math.abs(one - other) > TOLERANCE * largest) throw new CalculationError(`${name}[${row}][${column}]`, `${one}, and ${other} across the diagonal`, 'a symmetric tensor: the same on both sides of the diagonal');
  }
  const sign = mass < 0 ? -1 : 1;
  const [low, middle, high] = principalMoments(tensor).map((moment) => sign * moment).toSorted((a, b) => a - b) as [number, number, number];
  if (high > low + middle + TOLERANCE * largest) {
    throw new CalculationError(name, `principal moments ${[low, middle, high].map((moment) => sign * moment).join(', ')} kg·m²`, `the inertia of a possible body: no principal moment above the sum of the other two${mass < 0 ? '; what is taken off has its inertia with a minus' : ''}`);
  }
}
