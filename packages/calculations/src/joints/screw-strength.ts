import { screwStrength as strengthOf } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { forceOutput, numberOutput, stressOutput } from '../specs.ts';
import { classInput, sizeInput, threadOf } from './screw-specs.ts';

export const screwStrength = defineCalculation({
  id: 'screw-strength',
  title: 'Strength of a screw',
  section: 'Joints and fits',
  summary: 'What a screw of a property class bears before it stretches for good, yields and breaks.',
  inputs: { size: sizeInput('M3'), propertyClass: classInput },
  outputs: {
    tensileStrength: stressOutput('Tensile strength', 'R_m'),
    yieldStrength: stressOutput('Yield strength', 'R_{p0.2}'),
    proofStress: stressOutput('Proof stress', 'S_p'),
    breakingForce: forceOutput('Force that breaks it', 'F_m'),
    yieldForce: forceOutput('Force at which it yields', 'F_{0.2}'),
    proofForce: forceOutput('Proof load', 'F_p'),
    shearRatio: numberOutput('Shear strength over tensile strength', '\\tau_B/R_m'),
  },
  formulas: [
    { output: 'tensileStrength', tex: String.raw`R_m` },
    { output: 'yieldStrength', tex: String.raw`R_{p0.2}` },
    { output: 'proofStress', tex: String.raw`S_p` },
    { output: 'breakingForce', tex: String.raw`F_m = R_m A_s` },
    { output: 'yieldForce', tex: String.raw`F_{0.2} = R_{p0.2} A_s` },
    { output: 'proofForce', tex: String.raw`F_p = S_p A_s` },
    { output: 'shearRatio', tex: String.raw`\frac{\tau_B}{R_m}` },
  ],
  source: 'ISO 898-1:2013, tables 3 and 5; ISO 3506-1:2009, table 2; VDI 2230-1:2003, table 6 (all from memory), proof loads checked against public tables.',
  validity: ['Least values of the class, at room temperature. The edition of ISO 3506-1 of 2009 gives stainless screws no proof load.', 'Steel and stainless steel only: aluminium, titanium and plastic screws have classes of their own.'],
  compute: ({ size, propertyClass }) => {
    const { diameter, stressArea } = threadOf(size);
    const { tensileStrength, yieldStrength, proofStress, shearRatio } = strengthOf(propertyClass, diameter);
    return {
      outputs: {
        tensileStrength,
        yieldStrength,
        breakingForce: tensileStrength * stressArea,
        yieldForce: yieldStrength * stressArea,
        shearRatio,
        ...(proofStress === undefined ? {} : { proofStress, proofForce: proofStress * stressArea }),
      },
      warnings: proofStress === undefined ? [`proofStress and proofForce are left out: the standard gives none for ${propertyClass}.`] : [],
    };
  },
});
