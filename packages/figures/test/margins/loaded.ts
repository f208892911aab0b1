/** An invented machine, small enough to reckon by hand: a motor, one spur mesh, a mast on two bearings, two blades. */
export const loaded = `
machine: {name: Loaded, invented: true, mass: 4 kg}
power: {motor: {on: motor, speed: 10000 rpm, power: 2 kW, turns: clockwise from above}}
shafts:
  motor: {axis: up, part: drive/shaft}
  mast: {axis: up, part: drive/mast}
drive:
  mesh: {kind: external, module: 1 mm, width: 10 mm, driver: {on: motor, teeth: 20, part: drive/pinion}, driven: {on: mast, teeth: 100, part: drive/gear}}
rotors:
  main: {on: mast, part: head/hub, blades: 2, diameter: 1400 mm, chord: 55 mm, section: NACA 0012, root: 130 mm, bolt-radius: 80 mm, blade-mass: 180 g, blade-centre: 280 mm, grip-mass: 80 g, grip-centre: 50 mm}
materials:
  steel: {yield: 600 MPa, root-strength: 300 MPa, flank-strength: 1000 MPa}
types:
  ball: {kind: deep-groove, bore: 10 mm, outer: 19 mm, width: 5 mm, dynamic: 1700 N, static: 840 N}
modules:
  drive:
    parts:
      frame: {ground: true, kind: housing, material: aluminium 7075}
      shaft: {kind: shaft, material: steel, diameter: 6 mm, at: [60 mm, 0 mm, 0 mm]}
      pinion: {kind: gear, material: steel, at: [60 mm, 0 mm, 30 mm]}
      mast: {kind: shaft, material: steel, outer: 10 mm, inner: 6 mm, at: [0 mm, 0 mm, 50 mm]}
      gear: {kind: gear, material: steel, at: [0 mm, 0 mm, 30 mm]}
      low: {type: ball, at: [0 mm, 0 mm, 0 mm]}
      high: {type: ball, at: [0 mm, 0 mm, 90 mm]}
    stacks:
      turning: {spindle: mast, housing: frame, ends: [down, up], order: [{shoulder: mast}, low, {shoulder: frame}, high], loads: [{pushes: mast, towards: up}]}
    joints:
      gear-pin: {kind: pin, in: mast, holds: gear, diameter: 3 mm, material: hardened steel, lock: press}
      pinion-screw: {kind: set-screw, thread: M4, in: pinion, holds: shaft, torque: 2 N·m, onto: flat, lock: medium}
  head:
    parts:
      hub: {kind: hub, material: aluminium 7075, at: [0 mm, 0 mm, 120 mm]}
      spindle: {kind: shaft, material: steel, diameter: 8 mm}
    joints:
      hub-bolt: {kind: bolt, thread: M4, class: 12.9, on: drive/mast, holds: hub, lock: insert}
  grip:
    copies: [A, B]
    parts:
      grip: {kind: grip, material: aluminium 7075, thickness: 5 mm}
      thrust: {kind: thrust-ball, bore: 8 mm, outer: 16 mm, width: 5 mm, static: 5000 N}
      blade: {kind: blade}
    stacks:
      pull: {spindle: head/spindle, housing: grip, ends: [inboard, outboard], order: [{shoulder: grip}, thrust, screw], loads: [{pushes: grip, towards: outboard}]}
    joints:
      screw: {kind: screw, thread: M5, class: 12.9, in: head/spindle, engagement: 10 mm, torque: 6 N·m, lock: medium}
      bolt: {kind: bolt, thread: M4, class: 12.9, in: grip, holds: blade, torque: snug, lock: insert}
limits:
  mast-speed: {of: speed mast, at-most: 2100 rpm}
`;
