import { passingFrequency } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { countInput, frequencyOutput, numberOutput, speedInput } from '../specs.ts';

export const sensorPulses = defineCalculation({
  id: 'sensor-pulses',
  title: 'Pulses of a speed sensor',
  section: 'Drive',
  summary: 'How often the magnets of a shaft pass its sensor.',
  inputs: { magnets: countInput('Magnets that the sensor sees in one turn', 'k', 2), shaftSpeed: speedInput('Speed of the shaft', 'n', 14_600) },
  outputs: { frequency: frequencyOutput('Pulse frequency', 'f'), pulsesPerTurn: numberOutput('Pulses per turn of the shaft', 'k') },
  formulas: [
    { output: 'pulsesPerTurn', tex: String.raw`k` },
    { output: 'frequency', tex: String.raw`f = k\,\frac{|\omega|}{2\pi}` },
  ],
  source: 'Definition.',
  validity: ['One pulse per magnet: a sensor that answers to one pole only sees half of magnets set with alternate poles.'],
  compute: ({ magnets, shaftSpeed }) => ({ outputs: { frequency: passingFrequency(magnets, shaftSpeed), pulsesPerTurn: magnets }, warnings: [] }),
});
