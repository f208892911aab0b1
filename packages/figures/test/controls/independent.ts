import type { LeverTrain, Mover, SwashplateGeometry } from '@rotorwright/mechanics';

/**
 * The plate by another route: rotation vectors, four equations with four unknowns, differences for derivatives; the
 * upper ring and the blade by halving. Nothing is shared with the code under test but the geometry.
 */
type V = readonly number[];
const minus = (a: V, b: V): V => a.map((each, index) => each - b[index]!);
const plus = (a: V, b: V): V => a.map((each, index) => each + b[index]!);
const inner = (a: V, b: V): number => a.reduce((sum, each, index) => sum + each * b[index]!, 0);
const size = (a: V): number => Math.sqrt(inner(a, a));
const outer = (a: V, b: V): V => [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
const scaled = (a: V, by: number): V => a.map((each) => each * by);

/** By a quaternion. */
export function spun(point: V, axis: V, angle: number): V {
  const length = size(axis);
  if (length === 0) return point;
  const u = scaled(axis, Math.sin(angle / 2) / length);
  const w = Math.cos(angle / 2);
  const t = scaled(outer(u, point), 2);
  return plus(plus(point, scaled(t, w)), outer(u, t));
}

const about = (point: V, { pivot, axis }: { readonly pivot: V; readonly axis: V }, angle: number): V => plus(pivot, spun(minus(point, pivot), axis, angle));

/** Where a point goes that rides on a servo or lever: levers turned, one after the other, until each rod has its length. */
export function carriedBy({ servos, levers }: LeverTrain, angles: readonly number[]): (mover: Mover, rest: V) => V {
  const turned: number[] = [];
  const carried = (mover: Mover, rest: V): V => {
    if ('servo' in mover) return about(rest, servos[mover.servo]!, angles[mover.servo]!);
    const lever = levers[mover.lever]!;
    const own = about(rest, lever, turned[mover.lever]!);
    return lever.on === undefined ? own : carried({ lever: lever.on }, own);
  };
  levers.forEach(({ ball, rod }, lever) => {
    const from = carried(rod.from, rod.ball);
    turned[lever] = halved((turn) => {
      turned[lever] = turn;
      return size(minus(carried({ lever }, ball), from)) - rod.length;
    }, -0.9, 0.9);
  });
  return carried;
}

/**
 * Height and rotation vector of the lower plate on three rods.
 *
 * @param balls  of the servos or levers, where they have gone
 */
export function plateByVectors({ servos, guide }: SwashplateGeometry, balls: readonly V[]): { readonly height: number; readonly turn: V; readonly normal: V } {
  const put = ([h, x, y, z]: V, point: V): V => plus([0, 0, h!], spun(point, [x!, y!, z!], size([x!, y!, z!])));
  const misses = (unknown: V): number[] => [
    ...servos.map((servo, index) => size(minus(put(unknown, servo.ball), balls[index]!)) - servo.rodLength),
    inner([-guide[1], guide[0], 0], minus(put(unknown, guide), [0, 0, unknown[0]!])),
  ];
  let unknown: number[] = [0, 0, 0, 0];
  for (let round = 0; round < 60; round += 1) {
    const here = misses(unknown);
    const columns = unknown.map((_, index) => {
      const by = index === 0 ? 1e-7 : 1e-6;
      return minus(misses(unknown.map((each, own) => (own === index ? each + by : each))), misses(unknown.map((each, own) => (own === index ? each - by : each)))).map((each) => each / (2 * by));
    });
    const move = gauss(here.map((_, row) => columns.map((column) => column[row]!)), here);
    unknown = unknown.map((each, index) => each - move[index]!);
  }
  const [height, ...turn] = unknown;
  return { height: height!, turn, normal: spun([0, 0, 1], turn, size(turn)) };
}

/** The same on more rods than it takes: where the squares of what each is too long or too short by are least. */
export function plateByLeastSquares({ servos, guide }: SwashplateGeometry, balls: readonly V[]): { readonly height: number; readonly normal: V } {
  const put = ([height, x, y]: V): ((point: V) => V) => {
    const normal = scaled([x!, y!, 1], 1 / size([x!, y!, 1]));
    const hinge = outer([0, 0, 1], normal);
    const lean = Math.atan2(Math.hypot(normal[0]!, normal[1]!), normal[2]!);
    const leaned = (point: V, turn: number): V => spun(size(hinge) < 1e-15 ? point : spun(point, hinge, lean), normal, turn);
    const turn = halved((each) => outer([guide[0], guide[1], 0], leaned(guide, each))[2]!, -0.5, 0.5);
    return (point) => plus([0, 0, height!], leaned(point, turn));
  };
  const misses = (unknown: V): number[] => {
    const to = put(unknown);
    return servos.map(({ ball, rodLength }, index) => size(minus(to(ball), balls[index]!)) - rodLength);
  };
  let unknown: V = [0, 0, 0];
  for (let round = 0; round < 25; round += 1) {
    const here = misses(unknown);
    const columns = unknown.map((_, index) => {
      const by = index === 0 ? 1e-6 : 1e-5;
      return minus(misses(unknown.map((each, own) => (own === index ? each + by : each))), misses(unknown.map((each, own) => (own === index ? each - by : each)))).map((each) => each / (2 * by));
    });
    unknown = minus(unknown, gauss(columns.map((row) => columns.map((column) => inner(row, column))), columns.map((column) => inner(column, here))));
  }
  const [height, x, y] = unknown;
  return { height: height!, normal: scaled([x!, y!, 1], 1 / size([x!, y!, 1])) };
}

function gauss(matrix: readonly V[], right: V): V {
  const rows = matrix.map((row, index) => [...row, right[index]!]);
  for (let at = 0; at < rows.length; at += 1) {
    const best = rows.findIndex((row, index) => index >= at && Math.abs(row[at]!) === Math.max(...rows.slice(at).map((each) => Math.abs(each[at]!))));
    [rows[at], rows[best]] = [rows[best]!, rows[at]!];
    for (let row = at + 1; row < rows.length; row += 1) rows[row] = rows[row]!.map((each, column) => each - (rows[row]![at]! / rows[at]![at]!) * rows[at]![column]!);
  }
  const found: number[] = [];
  for (let at = rows.length - 1; at >= 0; at -= 1) found[at] = (rows[at]![rows.length]! - rows[at]!.slice(at + 1, rows.length).reduce((sum, each, index) => sum + each * found[at + 1 + index]!, 0)) / rows[at]![at]!;
  return found;
}

export function halved(f: (x: number) => number, low: number, high: number): number {
  const rising = f(high) > f(low);
  for (let round = 0; round < 200; round += 1) {
    const middle = (low + high) / 2;
    if (f(middle) < 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Pitch of a blade at an azimuth, with the plate's centre and normal where they are. */
export function pitchByHalving({ rotation, link, grip }: SwashplateGeometry, height: number, normal: V, azimuth: number): number {
  const sense = rotation === 'counterclockwise' ? 1 : -1;
  const outboard: V = [-Math.cos(azimuth), -sense * Math.sin(azimuth), 0];
  const leading = scaled(outer([0, 0, 1], outboard), sense);
  const space = ([r, t, z]: V): V => plus(plus(scaled(outboard, r!), scaled(leading, t!)), [0, 0, z!]);
  const hinge = outer([0, 0, 1], normal);
  const lean = Math.atan2(Math.hypot(normal[0]!, normal[1]!), normal[2]!);
  const leaned = (point: V, turn: number): V => spun(size(hinge) < 1e-15 ? point : spun(point, hinge, lean), normal, turn);
  const driver = space(link.driver);
  const turn = halved((each) => outer(driver, leaned(driver, each))[2]!, -0.5, 0.5);
  const upper = plus([0, 0, height], leaned(space(link.upperBall), turn));
  const miss = (pitch: number): number => {
    const [r, t, z] = grip.ball;
    const ball = plus(space([r, t * Math.cos(pitch) - z * Math.sin(pitch), t * Math.sin(pitch) + z * Math.cos(pitch)]), [0, 0, grip.height]);
    return size(minus(ball, upper)) - link.length;
  };
  return halved(miss, -0.9, 0.9);
}
