import { ProjectError, schedule as shortest, type Project, type Schedule } from '@rotorwright/reliability';
import { CalculationError, defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

const time = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 's', shown: 'min', min: 0, max: 1e9 }) as const;
const timeOutput = (title: string, symbol: string) => ({ title, symbol, unit: 's', shown: 'min' }) as const;
const amount = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, max: 1e9 }) as const;

const minute = 60;

export const schedule = defineCalculation({
  id: 'schedule',
  title: 'Shortest schedule',
  section: 'Reliability and planning',
  summary: 'When to start each piece of work so that all is done soonest: what waits for what, cure times, hands and tools shared, evenings.',
  inputs: {
    activities: {
      kind: 'list',
      title: 'Pieces of work',
      of: {
        kind: 'record',
        title: 'Activity',
        fields: {
          id: { kind: 'text', title: 'Its name' },
          duration: time('How long it takes, without a break', 'd'),
          needs: { kind: 'map', title: 'How much of each resource it takes meanwhile', of: amount('Need', 'u'), optional: true },
          after: {
            kind: 'list',
            title: 'Those that must have ended, and how long before',
            of: { kind: 'record', title: 'After', shorthand: 'id', fields: { id: { kind: 'text', title: 'Name of the other' }, lag: { ...time('Time that must pass after its end: cure', 'l'), default: 0 } } },
            optional: true,
          },
        },
      },
      example: [
        { id: 'bond the bearing', duration: 25 * minute, needs: { builder: 1 } },
        { id: 'face the frame', duration: 70 * minute, needs: { builder: 1 } },
        { id: 'fit the shaft', duration: 40 * minute, needs: { builder: 1 }, after: [{ id: 'bond the bearing', lag: 86_400 }] },
        { id: 'close the frame', duration: 50 * minute, needs: { builder: 1 }, after: [{ id: 'face the frame' }, { id: 'fit the shaft' }] },
      ],
    },
    resources: { kind: 'map', title: 'Resources: how much there is of each', of: amount('Capacity', 'R'), optional: true, example: { builder: 1 } },
    window: {
      kind: 'record',
      title: 'Evenings: work lies whole inside one',
      optional: true,
      fields: {
        period: { ...time('From the opening of one to that of the next', 'P'), above: 0, example: 86_400 },
        length: { ...time('How long one lasts', 'L'), above: 0, example: 9000 },
      },
    },
    limit: { kind: 'number', title: 'Longest time to look for it', symbol: 't', unit: 's', shown: 's', min: 0, max: 3600, default: 10 },
  },
  outputs: {
    makespan: timeOutput('When the last piece of work ends', 'C'),
    starts: { ...timeOutput('When each starts', 's_i'), map: true },
    windowsUsed: numberOutput('Evenings until the last has ended', 'n'),
    lowerBound: timeOutput('No schedule can end sooner', 'C_\\mathrm{low}'),
    proven: numberOutput('1 when no schedule is shorter, 0 when that is not known', 'q'),
  },
  formulas: [
    { output: 'makespan', tex: String.raw`C = \min \max_i\,(s_i + d_i)` },
    { output: 'starts', tex: String.raw`s_j \ge s_i + d_i + l_{ij},\quad \sum_{i:\,s_i \le t < s_i + d_i} u_{ir} \le R_r` },
    { output: 'windowsUsed', tex: String.raw`n = \left\lfloor s_\mathrm{last} / P \right\rfloor + 1` },
    { output: 'lowerBound', tex: String.raw`C_\mathrm{low} \le C` },
    { output: 'proven', tex: String.raw`q = [\,C_\mathrm{low} = C\,]` },
  ],
  source: 'Resource-constrained project scheduling; search that learns from conflicts: Schutt, Feydy, Stuckey, Wallace, Explaining the cumulative propagator (2011) (from memory).',
  validity: ['The last end is all that is made least: among schedules that reach it, any may be given.', 'Times are held to a microsecond.'],
  compute: (project) => {
    const found = solved(project);
    const warnings = found.proven ? [] : [`Not proven shortest within ${project.limit} s: no schedule ends before ${found.lowerBound} s, this one ends at ${found.makespan} s.`];
    return { outputs: { ...found, proven: found.proven ? 1 : 0 }, warnings };
  },
});

function solved({ limit, ...project }: Project & { readonly limit: number }): Schedule {
  try {
    return shortest(project, { limit });
  } catch (error) {
    if (error instanceof ProjectError) throw new CalculationError(error.path, JSON.stringify(error.given), `a project that can be done: ${error.message}`);
    throw error;
  }
}
