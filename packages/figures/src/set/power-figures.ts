import type { Coupling, Rotor } from '@rotorwright/machine';
import type { DriveSolution, Motion } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import type { Builder } from './builder.ts';
import { optional } from './tail-figures.ts';

/** What gets through a stage when the file does not say: clutches that grip and rigid joints lose nothing. */
const usualEfficiency: Readonly<Partial<Record<Coupling['kind'], number>>> = { external: 0.98, internal: 0.985, bevel: 0.97, belt: 0.97 };
const practice = 'common practice, no source';

const cases = [
  ['', ''],
  ['-low', ', low'],
  ['-high', ', high'],
] as const;

/** What engine or motor must give in hover: both rotors, the losses on the way to them, the cooling fan. */
export function addPowerNeeded(builder: Builder, drive: DriveSolution, main: Rotor, tail: Rotor | undefined): void {
  const { machine } = builder;
  const { engine } = machine.power;
  const motions = drive.states.get('driven')?.motions;
  const source = drive.source;
  if (!motions || !source) return;
  const loads = (band: string): readonly Readonly<Record<string, FigureInput>>[] => [
    { power: { figure: `hover-power${band} ${main.id}` }, stages: stagesTo(motions.get(main.on)) },
    ...(tail ? [{ power: { figure: `tail-power${band} hover` }, stages: stagesTo(motions.get(tail.on)) }] : []),
  ];
  const fan: Readonly<Record<string, FigureInput>> = engine?.fan === undefined ? {} : {
    fan: { entry: `${engine.path}.fan`, value: engine.fan, unit: 'W' },
    ...optional('fanSpeed', engine.speed === undefined ? undefined : { entry: `${engine.path}.speed`, value: engine.speed, unit: 'rad/s' }),
  };
  const named = source.kind === 'engine' ? 'the engine' : 'the motor';
  const missing = tail ? [] : ['rotors.tail'];
  for (const [band, words] of cases) {
    const inputs = { loads: { list: loads(band) }, ...fan, density: { figure: 'air-density' }, speed: { figure: `speed ${source.shaft}` } };
    builder.add({ name: `power-needed${band} hover`, title: `Power needed of ${named}${words}, hovering`, unit: 'W', shown: 'W', calculation: 'power-needed', output: 'power', inputs, missing });
    builder.add({ name: `torque-needed${band} hover`, title: `Torque needed of ${named}${words}, hovering`, unit: 'N·m', shown: 'N·m', calculation: 'power-needed', output: 'torque', inputs, missing });
    if (band === '') builder.add({ name: 'power-lost hover', title: 'Power lost in gears and belts, hovering', unit: 'W', shown: 'W', calculation: 'power-needed', output: 'losses', inputs, missing });
  }
}

/** Stages on a way, as `power-needed` asks for them. */
export function stagesTo(motion: Motion | undefined): FigureInput {
  return {
    list: (motion?.path ?? []).flatMap(({ leg: { coupling } }): Readonly<Record<string, FigureInput>>[] => {
      if (coupling.efficiency !== undefined) return [{ efficiency: { entry: `${coupling.path}.efficiency`, value: coupling.efficiency, unit: '-' } }];
      const usual = usualEfficiency[coupling.kind];
      return usual === undefined ? [] : [{ efficiency: { constant: usual, unit: '-', source: `${coupling.title}: ${practice}` } }];
    }),
  };
}
