import type { PlacedTrain, SideShaft, Spot, Station } from './place.ts';

/** A point on the screen, px, y down. */
export type Pixel = readonly [x: number, y: number];

/** A shaft in the paper, px. */
export interface FittedSide {
  readonly side: SideShaft;
  /** Where its axis meets that of the shaft that turns it. */
  readonly crossing: Pixel;
  readonly start: Pixel;
  readonly end: Pixel;
  /** Up to here it lies under the wheels of its station. */
  readonly hiddenTo?: Pixel;
  /** Shortened here. */
  readonly breakAt?: Pixel;
  /** Belts: centre of the pulley from which it comes. */
  readonly beltFrom?: Pixel;
}

export interface FittedTrain {
  readonly width: number;
  readonly height: number;
  /** px for each mm of gears and centre distances. */
  readonly scale: number;
  readonly stations: ReadonlyMap<string, Pixel>;
  readonly sides: readonly FittedSide[];
  /** Heights of the strips above and below that belong to callouts. */
  readonly top: number;
  readonly bottom: number;
  /** Where dimension lines run. */
  readonly dimensionY: number;
}

export interface Room {
  readonly width: number;
  /** Rows of callouts above and below, and what each takes, px. */
  readonly rowsAbove: number;
  readonly rowsBelow: number;
  readonly row: number;
  /** What stands out to the left beyond the wheels, px. */
  readonly overhang: number;
}

/** Below this width the picture is that of a phone. */
export const narrow = 560;

const margin = 14;
const dimensions = 40;

/**
 * Fits a placed train into a width: one scale for all gears and centre distances; tubes, belts to the tail and tail
 * shafts are shortened.
 */
export function fitTrain(train: PlacedTrain, room: Room): FittedTrain {
  const small = room.width < narrow;
  const reach = extents(train.stations);
  const going = (x: number, y: number): boolean => train.sides.some((side) => side.along[0] === x && side.along[1] === y && chainStart(train, side));
  const length = small ? 118 : Math.min(330, Math.max(220, room.width * 0.34));
  const right = going(1, 0) ? length : 0;
  const left = Math.max(going(-1, 0) ? length : 0, room.overhang);
  const tallest = small ? 240 : 264;
  const scale = Math.max(0.4, Math.min((room.width - 2 * margin - right - left) / (reach.right - reach.left), tallest / (reach.up - reach.down), 5));
  const across = small ? 78 : 96;
  // Shafts across the paper reach up or down from where their train runs.
  const needs = (way: 1 | -1): number => Math.max(0, ...train.sides.filter((side) => upright(side)[1] !== 0).map((side) => (upright(side)[1] === way ? acrossFrom(train, side, scale, across) + 22 : 44)));
  const above = Math.max(reach.up * scale, needs(1)) + 10;
  const below = Math.max(-reach.down * scale, needs(-1)) + 10;
  const top = room.rowsAbove * room.row;
  const bottom = room.rowsBelow * room.row + (train.ties.some(({ distance }) => distance !== undefined) ? dimensions : 8);
  const drawn = (reach.right - reach.left) * scale + right + left;
  const originX = (room.width - drawn) / 2 + left - reach.left * scale;
  const originY = top + above;
  const pixel = ([x, y]: Spot): Pixel => [originX + x * scale, originY - y * scale];
  const stations = new Map(train.stations.map((station) => [station.id, pixel(station.at)]));
  const rim = { right: originX + reach.right * scale, left: originX + reach.left * scale };
  const sides = fitSides(train, stations, scale, { rim, length, across });
  return { width: room.width, height: originY + below + bottom, scale, stations, sides, top, bottom, dimensionY: originY + below + 16 };
}

/** Which way a shaft across the paper goes; a belt's pulley sits on a shaft of its own direction. */
const upright = (side: SideShaft): readonly [number, number] => (side.by.kind === 'belt' ? side.axis : side.along);

/** How far it reaches: clear of the wheels of the station that it starts from. */
function acrossFrom(train: PlacedTrain, side: SideShaft, scale: number, across: number): number {
  const station = side.by.kind === 'belt' ? undefined : train.stations.find(({ id }) => id === side.from);
  return station ? Math.max(across, station.outer * scale + 40) : across;
}

const chainStart = (train: PlacedTrain, side: SideShaft): boolean => train.stations.some(({ id }) => id === side.from) || train.sides.some(({ id }) => id === side.from);

function extents(stations: readonly Station[]): { readonly left: number; readonly right: number; readonly up: number; readonly down: number } {
  const of = (pick: (station: Station) => number): readonly number[] => stations.map(pick);
  return {
    left: Math.min(-8, ...of(({ at, outer }) => at[0] - outer)),
    right: Math.max(8, ...of(({ at, outer }) => at[0] + outer)),
    up: Math.max(8, ...of(({ at, outer }) => at[1] + outer)),
    down: Math.min(-8, ...of(({ at, outer }) => at[1] - outer)),
  };
}

interface Reaches {
  readonly rim: { readonly right: number; readonly left: number };
  readonly length: number;
  readonly across: number;
}

function fitSides(train: PlacedTrain, stations: ReadonlyMap<string, Pixel>, scale: number, { rim, length, across }: Reaches): readonly FittedSide[] {
  const fitted = new Map<string, FittedSide>();
  for (const side of train.sides) {
    const station = stations.get(side.from);
    const parent = fitted.get(side.from);
    const origin = station ?? parent?.end ?? [rim.right, 0];
    const [ax, ay] = side.along;
    if (side.by.kind === 'belt') {
      // The belt runs along; its pulley sits at the far end, on a shaft of its own direction.
      const toRight = ax >= 0;
      const crossing: Pixel = ax === 0 ? [origin[0], origin[1] - ay * length] : [toRight ? rim.right + length * 0.72 : rim.left - length * 0.72, origin[1]];
      const [ux, uy] = side.axis;
      const lie = ux === 0 ? uy : ux;
      const end: Pixel = ux === 0 ? [crossing[0], crossing[1] - lie * across] : [crossing[0] + lie * across, crossing[1]];
      const start: Pixel = ux === 0 ? [crossing[0], crossing[1] + lie * 24] : [crossing[0] - lie * 24, crossing[1]];
      fitted.set(side.id, { side, crossing, start, end, beltFrom: origin });
      continue;
    }
    const offset = side.wheel.radius * scale;
    if (ax !== 0) {
      const from = station ? (ax > 0 ? rim.right : rim.left) : origin[0];
      const end: Pixel = [from + ax * length * (side.rotors.length > 0 ? 0.6 : 0.68), origin[1]];
      const start: Pixel = [origin[0] + side.lies[0] * side.mate.radius * scale, origin[1]];
      const covered = station !== undefined && Math.abs(from - origin[0]) > offset;
      fitted.set(side.id, { side, crossing: origin, start, end, ...(covered ? { hiddenTo: [from, origin[1]] as Pixel } : {}), breakAt: [from + ax * length * 0.3, origin[1]] });
    } else {
      const end: Pixel = [origin[0], origin[1] - ay * acrossFrom(train, side, scale, across)];
      const start: Pixel = [origin[0], origin[1] - side.lies[1] * (side.mate.radius * scale + 6)];
      fitted.set(side.id, { side, crossing: origin, start, end });
    }
  }
  return [...fitted.values()];
}
