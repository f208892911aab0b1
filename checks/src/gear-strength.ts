import type { Check, Source } from './check.ts';
import { sourced, type Row } from './rows.ts';

const celsius = (value: number): number => value + 273.15;

const vdiCurves: Source = { document: 'VDI 2736-2:2014, as public code quotes it; values computed from that formula', kind: 'published' };
/** Degrees, load cycles, σ_FlimN and σ_HlimN in MPa. */
const curvePoints = [
  [20, 1e6, 50.238_293_779_207_72, 89.924_546_511_904_85],
  [20, 1e8, 35.047_545_726_038_315, 56.204_031_695_454_994],
  [60, 1e7, 32.924_286_822_139_89, 62.514_818_208_667_435],
] as const;
/** A pinion of POM without friction stays as warm as the air; at one turn a second it has as many load cycles as seconds. */
const coolPinion = { normalModule: '1 mm', teeth1: 17, teeth2: 84, faceWidth: '12 mm', torque: '1 N·m', speed: 2 * Math.PI, friction: 0, plasticGear: '1' };
const pomCurves: readonly Row[] = curvePoints.flatMap(([degrees, cycles, root, flank]): readonly Row[] => {
  const inputs = { material: 'POM', temperature: `${degrees} °C`, cycles };
  const title = `POM at ${degrees} °C after ${cycles} cycles`;
  const gear = { ...coolPinion, ambient: `${degrees} °C`, hours: cycles };
  return [
    [title, 'plastic-fatigue', inputs, 'rootStrength', root * 1e6, 1e-9, 'relative'],
    [title, 'plastic-fatigue', inputs, 'flankStrength', flank * 1e6, 1e-9, 'relative'],
    [`${title}, as a pinion that loses nothing: its root stands twice the limit of the curve`, 'gear-strength-plastic', gear, 'rootStrength', 2 * root * 1e6, 1e-9, 'relative'],
    [`${title}, as a pinion that loses nothing`, 'gear-strength-plastic', gear, 'flankStrength', flank * 1e6, 1e-9, 'relative'],
  ];
});

const warmed = { ambient: '25 °C', lossPower: '2 W', mate: 'steel', faceWidth: '10 mm', teeth: 60, pitchLineSpeed: '8 m/s', normalModule: '1 mm' };
const warmth = sourced({ document: 'VDI 2736-2:2014, coefficients as public code quotes them; values computed from that formula', kind: 'published' }, [
  ['root of a plastic gear on steel, 2 W lost', 'plastic-gear-temperature', { ...warmed, place: 'root' }, 'temperature', celsius(25.627_168_576_376_73), 1e-9, 'relative'],
  ['flank of a plastic gear on steel, 2 W lost', 'plastic-gear-temperature', { ...warmed, place: 'flank' }, 'temperature', celsius(29.414_706_180_082), 1e-9, 'relative'],
]);
const warmthRatios = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['plastic on plastic: 2148 in place of 895, 0.62717 K · 2.4 = 1.50520 K', 'plastic-gear-temperature', { ...warmed, mate: 'plastic', place: 'root' }, 'temperature', celsius(25 + (0.627_168_576_376_73 * 2148) / 895), 1e-9, 'relative'],
  ['plastic on plastic: 9000 in place of 6300, 4.41471 K · 10/7', 'plastic-gear-temperature', { ...warmed, mate: 'plastic', place: 'flank' }, 'temperature', celsius(25 + (4.414_706_180_082 * 10) / 7), 1e-9, 'relative'],
]);

/** The pair of a test rig for gear oils: module 4.5, 16 and 24 teeth, 91.5 mm. */
const rig = { normalModule: '4.5 mm', teeth1: 16, teeth2: 24, shift1: 0.1817, shift2: 0.1715, faceWidth: '14 mm', centreDistance: '91.5 mm' };
const rigSteel = { youngsModulus: '206 GPa', poissonsRatio: 0.3 };
const rigLoaded = { ...rig, torque: '302 N·m', K: [1, 1, 1, 1], material1: rigSteel, material2: rigSteel };
const rigReport: Source = { document: 'Published report of a calculation after DIN 3990 and ISO 6336: gears type C of the oil test rig', place: 'factors Z_E, Z_H, Z_ε, Y_β, H_V; working pressure angle and contact ratio', kind: 'published' };
const rigChecks = sourced(rigReport, [
  ['test-rig pair: Z_E in √MPa', 'gear-strength-metal', rigLoaded, 'elasticityFactor', 189_812, 0.6, 'absolute'],
  ['test-rig pair: Z_H', 'gear-strength-metal', rigLoaded, 'zoneFactor', 2.342, 0.0006, 'absolute'],
  ['test-rig pair: Z_ε', 'gear-strength-metal', rigLoaded, 'contactRatioFactor', 0.92, 0.0006, 'absolute'],
  ['test-rig pair without helix: Y_β', 'gear-strength-metal', rigLoaded, 'rootHelixFactor', 1, 0, 'absolute'],
  ['test-rig pair: working pressure angle', 'gear-pair', rig, 'workingPressureAngle', (22.438_79 * Math.PI) / 180, 1e-7, 'absolute'],
  ['test-rig pair: contact ratio', 'gear-pair', rig, 'transverseContactRatio', 1.462_45, 5e-6, 'absolute'],
  ['test-rig pair: loss factor', 'gear-loss', { teeth1: 16, teeth2: 24, tipContactRatio1: 0.734_151_981_001_72, tipContactRatio2: 0.728_376_710_569_009_1, power: 1 }, 'lossFactor', 0.1986, 6e-5, 'absolute'],
]);

/** Teeth, Y_Fa, Y_Sa: load at the tip, no shift, rack 1, 1.25, 0.38. Read off curves, so they scatter by half a per cent. */
const charted = [[17, 2.97, 1.52], [20, 2.8, 1.55], [25, 2.62, 1.59], [30, 2.52, 1.625], [40, 2.4, 1.67], [50, 2.32, 1.7], [60, 2.28, 1.73], [80, 2.22, 1.77], [100, 2.18, 1.79], [150, 2.14, 1.83], [200, 2.12, 1.865]] as const;
const chart: Source = { document: 'Tables of Y_Fa and Y_Sa in textbooks on machine elements, after the curves of DIN 3990-3 (from memory)', place: '20°, tip height 1, root depth 1.25, fillet 0.38', kind: 'published' };
const plasticLoad = { torque: '1 N·m', speed: '3000 rpm', hours: '100 h', ambient: '20 °C' };
const chartChecks = sourced(
  chart,
  charted.flatMap(([teeth2, form, correction]): readonly Row[] => {
    const inputs = { normalModule: '1 mm', teeth1: 20, teeth2, faceWidth: '10 mm', ...plasticLoad };
    return [
      [`${teeth2} teeth, load at the tip`, 'gear-strength-plastic', inputs, 'formFactor', form, 0.008, 'relative'],
      [`${teeth2} teeth, load at the tip`, 'gear-strength-plastic', inputs, 'stressCorrectionFactor', correction, 0.005, 'relative'],
    ];
  }),
);

/** Worked in another language: the fillet as the envelope of the rack’s corner, its 30° tangent and curvature found by differences, the lever by statics. */
const generated: Source = { document: 'Fillet generated point by point, tangent and curvature by differences, lever by statics; curvatures of the flanks along the line of action', kind: 'independent route' };
const helical = { normalModule: '1 mm', helixAngle: '15 °', teeth1: 17, teeth2: 84, shift1: 0.25, shift2: -0.1, faceWidth: '12 mm', torque: '1.6 N·m' };
const hardOnLight = { ...helical, speed: '14000 rpm', material1: { name: 'hardened steel', contactStrength: '1200 MPa', rootStrength: '400 MPa' }, material2: { name: 'aluminium 7075', contactStrength: '400 MPa', rootStrength: '80 MPa' } };
const pomWheel = { ...helical, speed: '14000 rpm', hours: '100 h', ambient: '25 °C', friction: 0.09 };
const generatedChecks = sourced(generated, [
  ['test-rig pinion', 'gear-strength-metal', rigLoaded, 'formFactor1', 1.685_256_026_078_828_5, 1e-9, 'relative'],
  ['test-rig wheel', 'gear-strength-metal', rigLoaded, 'formFactor2', 1.580_459_791_675_256_5, 1e-9, 'relative'],
  ['test-rig pinion', 'gear-strength-metal', rigLoaded, 'stressCorrectionFactor1', 1.848_114_804_571_233_4, 1e-9, 'relative'],
  ['test-rig wheel', 'gear-strength-metal', rigLoaded, 'stressCorrectionFactor2', 1.912_468_704_102_429_5, 1e-9, 'relative'],
  ['test-rig pinion: one pair alone carries at its inner point', 'gear-strength-metal', rigLoaded, 'singlePairFactor1', 1.070_209_580_729_698_7, 1e-9, 'relative'],
  ['test-rig wheel', 'gear-strength-metal', rigLoaded, 'singlePairFactor2', 1, 0, 'absolute'],
  ['helical steel pinion', 'gear-strength-metal', hardOnLight, 'formFactor1', 1.294_612_144_386_024, 1e-9, 'relative'],
  ['helical light-alloy wheel', 'gear-strength-metal', hardOnLight, 'formFactor2', 1.367_387_383_778_592, 1e-9, 'relative'],
  ['helical steel pinion', 'gear-strength-metal', hardOnLight, 'stressCorrectionFactor1', 2.076_367_236_859_426, 1e-9, 'relative'],
  ['helical light-alloy wheel', 'gear-strength-metal', hardOnLight, 'stressCorrectionFactor2', 2.054_207_653_003_329, 1e-9, 'relative'],
  ['helical pair', 'gear-strength-metal', hardOnLight, 'helixFactor', 1 / Math.sqrt(Math.cos(Math.PI / 12)), 1e-12, 'relative'],
  ['helical pair', 'gear-strength-metal', hardOnLight, 'tangentialForce', 181.821_332_007_354, 1e-9, 'relative'],
  ['helical pair', 'gear-strength-metal', hardOnLight, 'contactStress', 309_830_477.958_774_45, 1e-9, 'relative'],
  ['helical steel pinion', 'gear-strength-metal', hardOnLight, 'rootStress1', 44_620_169.612_061_284, 1e-9, 'relative'],
  ['helical light-alloy wheel', 'gear-strength-metal', hardOnLight, 'rootStress2', 46_625_476.588_352_63, 1e-9, 'relative'],
  ['helical steel pinion, 1200 MPa', 'gear-strength-metal', hardOnLight, 'contactSafety1', 1200e6 / (309_830_477.958_774_45 * 1.000_742_287_538_031_6), 1e-9, 'relative'],
  ['helical light-alloy wheel, 400 MPa', 'gear-strength-metal', hardOnLight, 'contactSafety2', 400e6 / 309_830_477.958_774_45, 1e-9, 'relative'],
  ['helical steel pinion, 400 MPa twice', 'gear-strength-metal', hardOnLight, 'rootSafety1', 800e6 / 44_620_169.612_061_284, 1e-9, 'relative'],
  ['helical light-alloy wheel, 80 MPa twice', 'gear-strength-metal', hardOnLight, 'rootSafety2', 160e6 / 46_625_476.588_352_63, 1e-9, 'relative'],
  ['1.6 N·m at 14,000 rpm', 'gear-strength-metal', hardOnLight, 'power', (1.6 * 14_000 * Math.PI) / 30, 1e-12, 'relative'],
  ['helical POM wheel, load at the tip', 'gear-strength-plastic', pomWheel, 'formFactor', 2.241_231_780_342_697_5, 1e-9, 'relative'],
  ['helical POM wheel, load at the tip', 'gear-strength-plastic', pomWheel, 'rootStress', 46_572_362.956_074_22, 1e-9, 'relative'],
  ['helical POM wheel', 'gear-strength-plastic', pomWheel, 'flankPressure', 71_289_130.841_812_61, 1e-9, 'relative'],
  ['helical POM wheel', 'gear-strength-plastic', pomWheel, 'lossFactor', 0.149_431_835_590_178_78, 1e-9, 'relative'],
]);

const omega = (14_000 * Math.PI) / 30;
const loss = 1.6 * omega * 0.09 * 0.149_431_835_590_178_78;
/** m_t = 1 mm/cos 15°; 0.5·17·m_t·ω */
const speed = (0.5 * 17e-3 * omega) / Math.cos(Math.PI / 12);
const rise = (coefficient: number): number => (loss * coefficient) / (12 * 84 * speed ** 0.75);
const rootStands = 2e6 * (26 - 0.0025 * (25 + rise(895)) ** 2 + 400 * 17e6 ** -0.2);
const flankStands = 1e6 * (36 - 0.0012 * (25 + rise(6300)) ** 2 + (1000 - 0.025 * (25 + rise(6300)) ** 2) * 17e6 ** -0.21);
const composed = sourced({ document: 'Put together from the parts checked above: loss, temperature rise, fatigue curve', kind: 'by hand' }, [
  ['1.6 N·m · 1466 rad/s · 0.09 · 0.14943', 'gear-strength-plastic', pomWheel, 'lossPower', loss, 1e-9, 'relative'],
  ['14,000 rpm · 17/84 for 100 h', 'gear-strength-plastic', pomWheel, 'cycles', 17e6, 1e-12, 'relative'],
  ['25 °C and 895 · P_V/(12 · 84 · v^0.75)', 'gear-strength-plastic', pomWheel, 'rootTemperature', celsius(25 + rise(895)), 1e-9, 'relative'],
  ['25 °C and 6300 · P_V/(12 · 84 · v^0.75)', 'gear-strength-plastic', pomWheel, 'flankTemperature', celsius(25 + rise(6300)), 1e-9, 'relative'],
  ['twice 26 − 0.0025·ϑ² + 400·N^−0.2', 'gear-strength-plastic', pomWheel, 'rootStrength', rootStands, 1e-9, 'relative'],
  ['36 − 0.0012·ϑ² + (1000 − 0.025·ϑ²)·N^−0.21', 'gear-strength-plastic', pomWheel, 'flankStrength', flankStands, 1e-9, 'relative'],
  ['twice 26 − 0.0025·ϑ² + 400·N^−0.2 over the stress', 'gear-strength-plastic', pomWheel, 'rootSafety', rootStands / 46_572_362.956_074_22, 1e-9, 'relative'],
  ['36 − 0.0012·ϑ² + (1000 − 0.025·ϑ²)·N^−0.21 over the pressure', 'gear-strength-plastic', pomWheel, 'flankSafety', flankStands / 71_289_130.841_812_61, 1e-9, 'relative'],
  ['0.2 · 1 kW lost', 'gear-loss', { teeth1: 16, teeth2: 24, tipContactRatio1: 0.5, tipContactRatio2: 0.5, power: '1 kW', friction: 0.1 }, 'lossPower', ((1000 * 0.1 * Math.PI * 2.5) / 24) * 0.5, 1e-12, 'relative'],
  ['1 − 0.1 · π · 2.5/24 · 0.5', 'gear-loss', { teeth1: 16, teeth2: 24, tipContactRatio1: 0.5, tipContactRatio2: 0.5, power: '1 kW', friction: 0.1 }, 'efficiency', 1 - 0.1 * ((Math.PI * 2.5) / 24) * 0.5, 1e-12, 'relative'],
]);

const lewisTable = [[12, 0.245], [14, 0.277], [16, 0.296], [18, 0.309], [20, 0.322], [24, 0.337], [28, 0.353], [34, 0.371], [43, 0.397], [60, 0.422], [100, 0.447], [300, 0.472]] as const;
const inch = 0.0254;
const pound = 4.448_221_615_260_5;
const shigley = { normalModule: inch / 8, teeth: 16, faceWidth: 1.5 * inch, allowableStress: (10_000 * pound) / inch ** 2, pitchLineSpeed: (628 / 60) * 12 * inch };
const example: Source = { document: 'Shigley, Mechanical Engineering Design, example 14-1 (from memory)', kind: 'published' };
const lewis = [
  ...sourced(
    { document: 'Table of Y in machine-design handbooks, as public code has it (Shigley, table 14-2, from memory)', kind: 'published' },
    lewisTable.map(([teeth, factor]): Row => [`${teeth} teeth`, 'gear-lewis', { normalModule: '1 mm', teeth, faceWidth: '10 mm' }, 'formFactor', factor, 0.0005, 'absolute']),
  ),
  ...sourced(example, [
    ['16 teeth of 8 to the inch at 628 ft/min', 'gear-lewis', shigley, 'velocityFactor', 1.52, 0.005, 'absolute'],
    ['16 teeth of 8 to the inch at 628 ft/min, 10,000 psi: 365 lbf', 'gear-lewis', shigley, 'allowableForce', 365 * pound, 0.004, 'relative'],
    ['16 teeth of 8 to the inch at 628 ft/min, 10,000 psi: 6.95 hp', 'gear-lewis', shigley, 'power', 6.95 * 550 * 12 * inch * pound, 0.004, 'relative'],
  ]),
  ...sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [['100 N/(10 mm · 1 mm · 0.322) = 31.06 MPa', 'gear-lewis', { normalModule: '1 mm', teeth: 20, faceWidth: '10 mm', tangentialForce: '100 N' }, 'bendingStress', 31.055_900_621_118_01e6, 1e-9, 'relative']]),
];

/** Strength and warmth of teeth. */
export const gearStrength: readonly Check[] = [...sourced(vdiCurves, pomCurves), ...warmth, ...warmthRatios, ...rigChecks, ...chartChecks, ...generatedChecks, ...composed, ...lewis];
