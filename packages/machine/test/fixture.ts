/** An invented machine for tests: every section once, small. Every number is invented. */
export const fixture = `# An invented machine for tests.
rotorwright: 1

machine:
  name: Test Petrel          # the name
  mass: 4.2 kg
  origin: mast axis, top of the lower bearing
  invented: true
  revision: 2026-11

power:
  engine: {kind: two-stroke, on: crank, displacement: 21 cm³, power: 2 kW,
    speed: 14000 rpm, best: 12500 to 15000 rpm, idle: 3500 rpm, turns: counter-clockwise from above}

shafts:
  crank: {axis: up}
  bell: {axis: up, expect: {speed: 14000 rpm}}
  mast: {axis: up, part: mast/tube}
  tail: {axis: left}
  tube: {axis: aft}

drive:
  clutch: {kind: centrifugal-clutch, driver: {on: crank}, driven: {on: bell, part: clutch/bell}, engages: 5000 rpm}
  main-mesh:
    kind: external
    module: 1 mm
    helix: 12 ° left              # hand of the driver
    width: 14 mm
    centre: 65 to 66 mm
    driver: {on: bell, teeth: 14, part: clutch/bell, choices: [13, 14, {teeth: 15, code: P-15, price: 18.50 EUR}]}
    driven: {on: mast, teeth: 116}
  front-bevel:
    kind: bevel
    driver: {on: mast, teeth: 40, lies: down}
    driven: {on: tube, teeth: 10, lies: aft}
  tail-belt: {kind: belt, driver: {on: tube, teeth: 20}, driven: {on: tail, teeth: 20}, pitch: 3 mm, belt-teeth: 300, runs: aft, twist: -90 °}

rotors:
  main: {on: mast, blades: 2, diameter: 1400 mm, chord: 54 mm, blade-mass: 150 g, blade-centre: 310 mm, bolt-radius: 90 mm, wanted: 1650 to 1750 rpm, part: mast/hub}
  tail: {on: tail, blades: 2, diameter: 250 mm}

consumables:
  medium: {kind: threadlocker, strength: medium, cure: 24 h, undo: hand tools}
  grease: {kind: grease, title: synthetic bearing grease}

materials:
  carbon plate: {density: 1550 kg/m³, expansion: 2e-6 1/K}

types:
  ball-8x16: {kind: deep-groove, bore: 8 mm, outer: 16 mm, width: 5 mm, dynamic: 1600 N}
  screw-m3: {kind: screw, head: socket, thread: M3, class: 12.9, torque: 1.1 N·m}

modules:
  frame:
    parts:
      sides: {ground: true, material: carbon plate, thickness: 2 mm}
  clutch:
    title: Clutch stack
    comes: assembled
    openings:
      top: {any: [cap, mount]}
    parts:
      bell: {material: steel, mass: 90 g, price: 40 EUR, code: C-1, spares: 1}
      mount: {material: aluminium 7075}
      cap: {material: aluminium 7075}
      bearing: {type: ball-8x16, grease: grease, behind: top}
    stacks:
      main:
        spindle: bell
        housing: mount
        ends: [down, up]
        order: [{shoulder: bell}, bearing, {shoulder: mount}, nut]
        loads: [main-mesh]
    joints:
      nut: {kind: nut, thread: M8x0.75, on: bell, lock: medium, torque: snug, behind: cap}
      cap-screw: {type: screw-m3, copies: 3, in: mount, holds: cap, lock: medium, enough: 2, torque: 0.9 N·m}
      mount-screw: {type: screw-m3, copies: [a, b], in: frame/sides, holds: mount, lock: [medium, wire]}
    measurements:
      coast: {of: drag main, with: by hand, ask: Does the bell coast?}
      backlash: {of: backlash main-mesh, window: 0.05 to 0.1 mm, set-by: mount-screw}
    steps:
      turn: {do: Turn the bell by hand., after: [coast], takes: 3 min}
  mast:
    parts:
      tube: {material: steel, mass: 80 g}
      hub: {material: aluminium 7075}
      stud: {copies: [A, B]}
    joints:
      bolt: {kind: bolt, thread: M4, on: tube, holds: hub, lock: insert, torque: 2 N·m}
      stud-thread: {kind: stud, copies: [A, B], thread: M2.5, in: hub, holds: stud, lock: none}
  grip:
    title: Grip
    copies: [A, B]
    parts:
      body: {material: aluminium 7075}
      ring: {copies: [in, out], type: ball-8x16}
      blade: {mass: 150 g, centre: 310 mm}
    joints:
      screw: {type: screw-m3, in: mast/hub, holds: body, lock: medium, behind: blade}
      blade-bolt: {kind: bolt, in: body, holds: blade, lock: insert, torque: snug, thread: M4, hand: left}
      link: {kind: ball-link, on: mast/stud, holds: [body, ring.*]}

controls:
  swashplate: {on: mast, arms: 3, radius: 40 mm, at: [0 mm, 0 mm, 90 mm], turns-with: mast/hub}
  servos:
    cyclic: {copies: [front, left], arm: 16 mm, travel: 90 °, axis: [0, 2, 0], azimuth: {front: 0 °, left: 120 °}}
    rudder: {arm: 12 mm}
  links:
    rod: {copies: [front, left], from: cyclic, to: swashplate, length: {front: 80 mm, left: 82 mm}}
    rudder-rod: {from: rudder, to: tail}

sensors:
  governor: {reads: bell, magnets: 2, part: clutch/cap, gap: 1.0 to 1.5 mm}

hazards:
  tail-lost: {ends-in: crash, when: {any: [{no-torque: [mast, tail]}, {no-motion: [rudder, tail]}]}}
  blade-lost: {ends-in: injury, when: {comes-off: grip/blade}}

service:
  bearings: {of: grip/ring, do: replace, every: 60 h}
  look: {of: clutch, do: look, every: 50 flights}

limits:
  bell-speed: {of: speed bell, at-most: 17000 rpm, source: maker's sheet (invented)}

bags:
  bag-1: {title: Bag one, holds: {clutch/cap: 1, grip/ring: 4}}

variants:
  short:
    title: Short blades
    rotors: {main: {diameter: 1250 mm, wanted: null}}
    drive: {front-bevel: {driver: {teeth: 38}}}
`;

/** The fixture with one piece replaced; fails when the piece is not there exactly once. */
export function broken(from: string, to: string): string {
  const pieces = fixture.split(from);
  if (pieces.length !== 2) throw new Error(`“${from}” stands in the fixture ${pieces.length - 1} times`);
  return pieces.join(to);
}
