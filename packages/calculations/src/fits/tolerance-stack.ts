import { randomState, simulateStack, worstCase, type StackMember } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { lengthOutput } from '../specs.ts';

const deviation = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'µm', min: -1, max: 1, default: 0 }) as const;
const bound = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', min: -1, max: 1, optional: true }) as const;

/** Shares of a normal spread below −3 and −1.96 standard deviations, in the middle, and above. */
const shares = [0.00135, 0.025, 0.5, 0.975, 0.99865] as const;

export const toleranceStack = defineCalculation({
  id: 'tolerance-stack',
  title: 'Gap of a chain of toleranced lengths',
  section: 'Joints and fits',
  summary: 'End play that a row of toleranced lengths leaves: at the worst, and as it comes out of many draws at random.',
  inputs: {
    members: {
      kind: 'list',
      title: 'Lengths of the chain',
      atLeast: 1,
      of: {
        kind: 'record',
        title: 'Length',
        fields: {
          length: { kind: 'number', title: 'Nominal length', symbol: 'L', unit: 'm', shown: 'mm', min: 0, max: 100 },
          lower: deviation('Lower deviation', 'e_l'),
          upper: deviation('Upper deviation', 'e_u'),
          sense: { kind: 'choice', title: 'Adds to the gap, or takes from it', choices: ['adds', 'takes'] },
          spread: { kind: 'choice', title: 'Spread evenly, or normally with the deviations at ±3 standard deviations', choices: ['uniform', 'normal'], default: 'uniform' },
        },
      },
      example: [
        { length: 0.0314, lower: 0, upper: 50e-6, sense: 'adds' },
        { length: 0.005, lower: -120e-6, upper: 0, sense: 'takes' },
        { length: 0.0209, lower: -20e-6, upper: 20e-6, sense: 'takes', spread: 'normal' },
        { length: 0.0055, lower: -120e-6, upper: 0, sense: 'takes' },
      ],
    },
    least: bound('Least gap that is wanted', 'g_l'),
    most: bound('Most gap that is wanted', 'g_u'),
    samples: { kind: 'number', title: 'Draws', symbol: 'n', unit: '-', shown: '-', whole: true, min: 1, max: 10_000_000, default: 200_000, example: 200_000 },
    seed: { kind: 'number', title: 'Seed: the same seed draws the same lengths', symbol: 's', unit: '-', shown: '-', whole: true, min: 0, max: Number.MAX_SAFE_INTEGER, default: 1, example: 1 },
  },
  outputs: {
    nominal: lengthOutput('Gap of the nominal lengths', 'g_0'),
    worstLeast: lengthOutput('Smallest gap, every length at its unkindest', 'g_\\mathrm{min}'),
    worstMost: lengthOutput('Largest gap, every length at its unkindest', 'g_\\mathrm{max}'),
    mean: lengthOutput('Mean gap', '\\mu'),
    standardDeviation: { title: 'Standard deviation of the gap', symbol: '\\sigma', unit: 'm', shown: 'µm' },
    low: lengthOutput('Gap below which 0.135 % lie', 'g_{0.135}'),
    low95: lengthOutput('Gap below which 2.5 % lie', 'g_{2.5}'),
    median: lengthOutput('Gap below which half lie', 'g_{50}'),
    high95: lengthOutput('Gap below which 97.5 % lie', 'g_{97.5}'),
    high: lengthOutput('Gap below which 99.865 % lie', 'g_{99.865}'),
    shareInside: { title: 'Share of the draws inside what is wanted', symbol: 'p', unit: '-', shown: '%' },
  },
  formulas: [
    { output: 'nominal', tex: String.raw`g_0 = \sum_k s_k L_k,\quad s_k = \pm 1` },
    { output: 'worstLeast', tex: String.raw`g_\mathrm{min} = \sum_{s_k = 1} (L_k + e_{l,k}) - \sum_{s_k = -1} (L_k + e_{u,k})` },
    { output: 'worstMost', tex: String.raw`g_\mathrm{max} = \sum_{s_k = 1} (L_k + e_{u,k}) - \sum_{s_k = -1} (L_k + e_{l,k})` },
    { output: 'mean', tex: String.raw`\mu = \frac{g_\mathrm{min} + g_\mathrm{max}}{2}` },
    { output: 'standardDeviation', tex: String.raw`\sigma^2 = \sum_k \begin{cases} (e_{u,k} - e_{l,k})^2/36 & \text{normal} \\ (e_{u,k} - e_{l,k})^2/12 & \text{uniform} \end{cases}` },
    { output: 'low', tex: String.raw`g_{0.135} = g_{(\operatorname{round}(0.00135\,n))},\quad g_{(0)} \le g_{(1)} \le \dots \le g_{(n-1)}` },
    { output: 'low95', tex: String.raw`g_{2.5} = g_{(\operatorname{round}(0.025\,n))}` },
    { output: 'median', tex: String.raw`g_{50} = g_{(\operatorname{round}(0.5\,n))}` },
    { output: 'high95', tex: String.raw`g_{97.5} = g_{(\operatorname{round}(0.975\,n))}` },
    { output: 'high', tex: String.raw`g_{99.865} = g_{(\operatorname{round}(0.99865\,n))}` },
    { output: 'shareInside', tex: String.raw`p = \frac{1}{n}\,\left|\{k : g_l \le g_k \le g_u\}\right|` },
  ],
  source: 'Addition of limits; variances of independent lengths add. The rest by drawing: sfc32 and the ziggurat of Marsaglia and Tsang, 2000 (from memory), checked against the closed forms of normal and of even sums.',
  validity: [
    'Each length is drawn for itself: parts of one batch resemble one another, and then the worst is nearer than the draws say.',
    'How lengths are really spread is seldom known; evenly is the careful guess of the two.',
    'The gap at bench temperature, without load: nothing bends, and nothing grows with heat.',
    'A gap below 0 is preload.',
  ],
  compute: ({ members, least, most, samples, seed }) => {
    const chain = members.map(({ length, lower, upper, sense, spread }, index): StackMember => {
      if (lower > upper) throw new CalculationError(`members[${index}].lower`, `${lower} m`, `not above the upper deviation, ${upper} m`);
      return { sense: sense === 'adds' ? 1 : -1, least: length + lower, most: length + upper, spread };
    });
    if (least !== undefined && most !== undefined && least > most) throw new CalculationError('least', `${least} m`, `not above the most that is wanted, ${most} m`);
    const worst = worstCase(chain);
    const { quantiles, inside } = simulateStack(chain, { samples, random: randomState(seed), shares, window: { ...(least === undefined ? {} : { least }), ...(most === undefined ? {} : { most }) } });
    const [low, low95, median, high95, high] = quantiles as readonly [number, number, number, number, number];
    const wanted = least !== undefined || most !== undefined;
    const few = samples < 10_000 ? [`low and high rest on about ${Math.round(samples * shares[0])} of ${samples} draws: take 10,000 or more.`] : [];
    return {
      outputs: {
        nominal: members.reduce((sum, { length, sense }) => sum + (sense === 'adds' ? length : -length), 0),
        worstLeast: worst.least,
        worstMost: worst.most,
        mean: (worst.least + worst.most) / 2,
        standardDeviation: Math.sqrt(chain.reduce((sum, { least: from, most: to, spread }) => sum + (to - from) ** 2 / (spread === 'normal' ? 36 : 12), 0)),
        low, low95, median, high95, high,
        ...(wanted ? { shareInside: inside } : {}),
      },
      warnings: wanted ? few : [...few, 'shareInside is left out: neither least nor most is given.'],
    };
  },
});
