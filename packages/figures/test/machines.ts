/** Small machines, each written for the tests. Every number is invented. */

/** A whole way from an engine to two rotors, with a clutch and a one-way clutch. */
export const wholeDrive = `
rotorwright: 1
machine: {name: Test stand}
power: {engine: {on: crank, speed: 14000 rpm, idle: 3500 rpm, turns: counter-clockwise from above}}
shafts:
  crank: {axis: up}
  bell: {axis: up}
  gear: {axis: up}
  mast: {axis: up}
  tail-tube: {axis: aft}
  tail-rotor: {axis: left}
drive:
  clutch: {kind: centrifugal-clutch, driver: {on: crank}, driven: {on: bell}}
  main: {kind: external, module: 1 mm, driver: {on: bell, teeth: 17, choices: [17, 18, 19]}, driven: {on: gear, teeth: 136}}
  free-wheel: {kind: one-way, driver: {on: gear}, driven: {on: mast}}
  front: {kind: bevel, driver: {on: mast, teeth: 54, lies: down}, driven: {on: tail-tube, teeth: 11, lies: aft}}
  rear: {kind: bevel, driver: {on: tail-tube, teeth: 15, lies: fore}, driven: {on: tail-rotor, teeth: 15, lies: right}}
rotors:
  main: {on: mast, blades: 2, diameter: 1500 mm, blade-mass: 200 g, bolt-radius: 100 mm, blade-centre: 320 mm, grip-mass: 80 g, grip-centre: 60 mm}
  tail: {on: tail-rotor, blades: 2, diameter: 260 mm}
sensors:
  governor: {reads: bell, magnets: 2}
`;

/** Two gears between two upright shafts; `body` is the rest of the coupling. */
export const onePair = (body: string, axes: readonly [string, string] = ['up', 'up']): string => `
rotorwright: 1
machine: {name: Pair}
power: {engine: {on: a, speed: 6000 rpm, turns: counter-clockwise from above}}
shafts: {a: {axis: ${axes[0]}}, b: {axis: ${axes[1]}}}
drive:
  mesh: {${body}}
`;

/** A ring of three shafts: a drives b and c, and b drives c again. */
export const ring = (bc: readonly [number, number], kind = 'internal'): string => `
rotorwright: 1
machine: {name: Ring}
power: {engine: {on: a, speed: 6000 rpm, turns: counter-clockwise from above}}
shafts: {a: {axis: up}, b: {axis: up}, c: {axis: up}, d: {axis: up}}
drive:
  ab: {kind: external, driver: {on: a, teeth: 20}, driven: {on: b, teeth: 40}}
  ac: {kind: external, driver: {on: a, teeth: 20}, driven: {on: c, teeth: 60}}
  bc: {kind: ${kind}, driver: {on: b, teeth: ${bc[0]}}, driven: {on: c, teeth: ${bc[1]}}}
  cd: {kind: external, driver: {on: c, teeth: 30}, driven: {on: d, teeth: 30}}
`;

/** The clutch of a machine whose pinion is screwed into the bell from above. */
export const clutchStack = (thread = 'M12x1', goesIn = 'goes-in: down, ', turns = 'counter-clockwise'): string => `
rotorwright: 1
machine: {name: Clutch}
power: {engine: {on: crank, speed: 14000 rpm, turns: ${turns} from above}}
shafts: {crank: {axis: up}, bell: {axis: up}, gear: {axis: up}}
drive:
  clutch: {kind: centrifugal-clutch, driver: {on: crank}, driven: {on: bell, part: clutch/bell}}
  main:
    kind: external
    module: 1 mm
    helix: 12 ° left
    driver: {on: bell, teeth: 17, part: clutch/pinion}
    driven: {on: gear, teeth: 85}
types:
  ball: {kind: deep-groove, bore: 8 mm, outer: 16 mm, width: 5 mm}
modules:
  clutch:
    parts:
      bell: {material: steel}
      pinion: {material: steel}
      mount: {material: aluminium 7075}
      low: {type: ball}
      high: {type: ball}
    stacks:
      main:
        spindle: pinion
        housing: mount
        ends: [down, up]
        order: [{shoulder: pinion}, low, {shoulder: mount}, high, nut]
        loads: [main]
    joints:
      pinion-thread: {kind: threaded-end, thread: ${thread}, in: bell, holds: pinion, ${goesIn}lock: high}
      nut: {kind: nut, thread: M8x0.75, on: pinion, lock: medium, torque: snug}
`;
