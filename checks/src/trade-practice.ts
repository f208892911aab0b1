import type { Check, Source } from './check.ts';

const practice: Source = { document: 'Common practice of the trade, no source', kind: 'common practice' };
const rpm = Math.PI / 30;

/** Figures that the trade goes by. */
export const tradePractice: readonly Check[] = [
  {
    calculation: 'shaft-speed',
    title: '54 teeth driving 11 is the “4.9 to 1”, 4.909',
    source: practice,
    inputs: { ratioNumerator: 54, ratioDenominator: 11, sourceSpeed: '1 rpm' },
    output: 'ratio',
    expected: 4.909,
    tolerance: 0.0005,
    mode: 'absolute',
  },
  ...(
    [
      [52, 13, 4],
      [54, 12, 4.5],
      [54, 11, 4.9],
    ] as const
  ).map(
    ([driver, driven, wanted]): Check => ({
      calculation: 'drive-ratio',
      title: `kits offer a tail ratio of about ${wanted}: ${driver} teeth driving ${driven} make it`,
      source: { ...practice, place: 'the tooth counts of 4.0 and 4.5 are chosen here' },
      inputs: { stages: [{ driver, driven }], inputSpeed: '1 rad/s' },
      output: 'outputSpeed',
      expected: wanted,
      tolerance: 0.05,
      mode: 'absolute',
    }),
  ),
  ...[2200, 2250, 2300].map(
    (speed): Check => ({
      calculation: 'drive-ratio',
      title: `at ${speed} rpm, 4.9 to 1 turns the tail near 11,000 rpm`,
      source: practice,
      inputs: { stages: [{ driver: 54, driven: 11 }], inputSpeed: `${speed} rpm` },
      output: 'outputSpeed',
      expected: 11_000 * rpm,
      // “Near” is taken as 3 %: the band itself is 4.5 % wide.
      tolerance: 0.03,
      mode: 'relative',
    }),
  ),
  {
    calculation: 'drive-ratio',
    title: 'a pinion of 19 instead of 17 teeth raises the rotor speed by 19/17',
    source: { ...practice, place: 'by hand: 14,600 rpm · 17/85 = 2,920 rpm, times 19/17' },
    inputs: { stages: [{ driver: 19, driven: 85 }], inputSpeed: '14600 rpm' },
    output: 'outputSpeed',
    expected: ((2920 * 19) / 17) * rpm,
    tolerance: 1e-12,
    mode: 'relative',
  },
  ...[1650, 2050].map(
    (speed): Check => ({
      calculation: 'tip-speed',
      title: `large machines run 1,650 to 2,050 rpm with tips at 120 to 180 m/s: a 1.55 m rotor at ${speed} rpm`,
      source: practice,
      inputs: { speed: `${speed} rpm`, radius: '775 mm' },
      output: 'tipSpeed',
      expected: 150,
      tolerance: 30,
      mode: 'absolute',
    }),
  ),
  ...(
    [
      ['storedEnergy', 1316, 0.5],
      ['centrifugalForce', 2467, 0.5],
    ] as const
  ).map(
    ([output, expected, tolerance]): Check => ({
      calculation: 'uniform-blade',
      title: `1.6 m rotor, two blades of 0.25 kg, 1,500 rpm: ${expected} ${output === 'storedEnergy' ? 'J stored' : 'N at each root'}`,
      source: { ...practice, place: 'holds for blades taken as even rods from the rotor axis to the tip, without hub: E = mR²Ω²/3, F = mΩ²R/2' },
      inputs: { blades: 2, bladeMass: '250 g', rootRadius: 0, radius: '0.8 m', speed: '1500 rpm' },
      output,
      expected,
      tolerance,
      mode: 'absolute',
    }),
  ),
  {
    calculation: 'thread-sense',
    title: 'a right-hand nut on the shaft of an engine that turns anticlockwise, seen from its front, is tightened by the propeller',
    source: practice,
    inputs: { hand: 'right', goesIn: 'against', turns: 'right-handed', torqueLeavesBy: 'threaded-part' },
    output: 'driven',
    expected: 1,
    tolerance: 0,
    mode: 'absolute',
  },
  {
    calculation: 'thread-sense',
    title: 'and is loosened when a stopped engine is braked by what the propeller still turns',
    source: { document: 'Definition: torque the other way', kind: 'law' },
    inputs: { hand: 'right', goesIn: 'against', turns: 'right-handed', torqueLeavesBy: 'threaded-part' },
    output: 'braking',
    expected: -1,
    tolerance: 0,
    mode: 'absolute',
  },
  {
    calculation: 'helix-push',
    title: 'right hand round a right-hand gear that drives, fingers along the rotation: the thumb points along its push',
    source: practice,
    inputs: { hand: 'right', turns: 'right-handed', role: 'driver' },
    output: 'push',
    expected: 1,
    tolerance: 0,
    mode: 'absolute',
  },
];
