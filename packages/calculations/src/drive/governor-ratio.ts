import { passingFrequency } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { countInput, frequencyOutput, numberOutput, speedInput, speedOutput } from '../specs.ts';

const turns = { kind: 'number', unit: '-', shown: '-', whole: true, min: 1 } as const;

export const governorRatio = defineCalculation({
  id: 'governor-ratio',
  title: 'What a governor asks for',
  section: 'Drive',
  summary: 'Ratio and pulse count to enter into a governor, from where its sensor sits and how many magnets it sees.',
  inputs: {
    sensorTurns: { ...turns, title: 'Turns of the shaft with the sensor …', symbol: 'p', example: 5 },
    rotorTurns: { ...turns, title: '… while the rotor makes so many', symbol: 'q', example: 1 },
    magnets: countInput('Magnets that the sensor sees in one turn', 'k', 2),
    rotorSpeed: speedInput('Speed of the rotor', 'n_\\mathrm{rotor}', 1760),
  },
  outputs: {
    ratio: numberOutput('Ratio, sensor shaft over rotor', 'i'),
    pulsesPerTurn: numberOutput('Pulses per turn of the sensor shaft', 'k'),
    pulsesPerRotorTurn: numberOutput('Pulses per turn of the rotor', 'k_\\mathrm{rotor}'),
    sensorSpeed: speedOutput('Speed of the sensor shaft', 'n_\\mathrm{sensor}'),
    frequency: frequencyOutput('Pulse frequency', 'f'),
  },
  formulas: [
    { output: 'ratio', tex: String.raw`i = \frac{p}{q}` },
    { output: 'pulsesPerTurn', tex: String.raw`k` },
    { output: 'pulsesPerRotorTurn', tex: String.raw`k_\mathrm{rotor} = k\,i` },
    { output: 'sensorSpeed', tex: String.raw`n_\mathrm{sensor} = i\,n_\mathrm{rotor}` },
    { output: 'frequency', tex: String.raw`f = k\,i\,\frac{|\omega_\mathrm{rotor}|}{2\pi}` },
  ],
  source: 'Definition.',
  validity: ['One pulse per magnet. A governor that counts electrical turns of a motor sees half as many as the motor has poles.'],
  compute: ({ sensorTurns, rotorTurns, magnets, rotorSpeed }) => {
    const ratio = sensorTurns / rotorTurns;
    return {
      outputs: {
        ratio,
        pulsesPerTurn: magnets,
        pulsesPerRotorTurn: (magnets * sensorTurns) / rotorTurns,
        sensorSpeed: ratio * rotorSpeed,
        frequency: passingFrequency(magnets, ratio * rotorSpeed),
      },
      warnings: [],
    };
  },
});
