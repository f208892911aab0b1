import { weibullFit } from '@rotorwright/reliability';
import { CalculationError, defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

const time = { kind: 'number', title: 'Time', symbol: 't', unit: 's', shown: 'h', above: 0 } as const;
const life = (title: string, symbol: string) => ({ title, symbol, unit: 's', shown: 'h' }) as const;

export const weibull = defineCalculation({
  id: 'weibull-fit',
  title: 'Life from failures',
  section: 'Reliability and planning',
  summary: 'Weibull distribution of a part’s life from times of failure and from parts that were still sound, with bounds.',
  inputs: {
    times: { kind: 'list', title: 'Times of failure', of: time, atLeast: 2, example: [54, 187, 216, 240, 244].map((hours) => hours * 3600) },
    censored: { kind: 'list', title: 'Times of those taken off or still running, sound', of: time, optional: true, example: [500, 500, 500].map((hours) => hours * 3600) },
    confidence: { kind: 'number', title: 'Confidence of the bounds, two-sided', symbol: '\\gamma', unit: '-', shown: '-', above: 0, max: 0.999999, default: 0.9 },
  },
  outputs: {
    shape: numberOutput('Shape', '\\beta'),
    scale: life('Scale: 63.2 % have failed by then', '\\eta'),
    shapeLow: numberOutput('Shape, low bound', '\\beta_\\mathrm{low}'),
    shapeHigh: numberOutput('Shape, high bound', '\\beta_\\mathrm{high}'),
    scaleLow: life('Scale, low bound', '\\eta_\\mathrm{low}'),
    scaleHigh: life('Scale, high bound', '\\eta_\\mathrm{high}'),
    tenPercentLife: life('By when a tenth has failed', 't_{10}'),
    tenPercentLifeLow: life('The same, low bound', 't_{10,\\mathrm{low}}'),
    tenPercentLifeHigh: life('The same, high bound', 't_{10,\\mathrm{high}}'),
    logLikelihood: numberOutput('Log-likelihood of the times in seconds', '\\ln L'),
  },
  formulas: [
    { output: 'shape', tex: String.raw`\frac{\sum t_i^\beta \ln t_i}{\sum t_i^\beta} - \frac{1}{\beta} = \frac{1}{r} \sum_\mathrm{failed} \ln t_i` },
    { output: 'scale', tex: String.raw`\eta = \left(\frac{1}{r} \sum t_i^\beta\right)^{1/\beta}` },
    { output: 'tenPercentLife', tex: String.raw`t_{10} = \eta\,(-\ln 0.9)^{1/\beta}` },
    { output: 'shapeLow', tex: String.raw`\beta_\mathrm{low} = \beta\,e^{-z s_{\ln\beta}}` },
    { output: 'shapeHigh', tex: String.raw`\beta_\mathrm{high} = \beta\,e^{z s_{\ln\beta}}` },
    { output: 'scaleLow', tex: String.raw`\eta_\mathrm{low} = \eta\,e^{-z s_{\ln\eta}}` },
    { output: 'scaleHigh', tex: String.raw`\eta_\mathrm{high} = \eta\,e^{z s_{\ln\eta}}` },
    { output: 'tenPercentLifeLow', tex: String.raw`t_{10,\mathrm{low}} = t_{10}\,e^{-z s_{\ln t_{10}}}` },
    { output: 'tenPercentLifeHigh', tex: String.raw`t_{10,\mathrm{high}} = t_{10}\,e^{z s_{\ln t_{10}}}` },
    { output: 'logLikelihood', tex: String.raw`\ln L = \sum_\mathrm{failed} \ln f(t_i) + \sum_\mathrm{sound} \ln S(t_i)` },
  ],
  source: 'Maximum likelihood; NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3. Bounds by the observed information on ln β, ln η.',
  validity: ['Biased for few failures: β comes out too high. Read the bounds, not the middle.'],
  compute: ({ times, censored = [], confidence }) => {
    if (new Set(times).size < 2) throw new CalculationError('times', JSON.stringify(times), 'at least two failure times that differ');
    return { outputs: { ...weibullFit(times, censored, confidence) }, warnings: times.length < 5 ? [`Only ${times.length} failures: the bounds are wide, and the shape is biased high.`] : [] };
  },
});
