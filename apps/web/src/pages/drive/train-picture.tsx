import { useId, useMemo, type PointerEvent, type ReactNode } from 'react';
import type { Machine } from '@rotorwright/machine';
import { useLive, type Live } from './live.ts';
import type { FittedTrain, Pixel } from './train/fit.ts';
import type { PaperMotion } from './train/motion.ts';
import type { PlacedTrain, Station } from './train/place.ts';
import { breakout, outlinePath, senseArc, webRadius } from './train/shapes.ts';
import { SideView } from './side-view.tsx';
import './train-picture.css';

export interface TrainPictureProps {
  readonly machine: Machine;
  readonly train: PlacedTrain;
  readonly fitted: FittedTrain;
  readonly motions: ReadonlyMap<string, PaperMotion>;
  /** Rotation of the source, rad. */
  readonly angle: Live;
  /** What the picture shows, for readers; the tables beside it say the same in full. */
  readonly label: string;
  /** Leaders of callouts, from the callout to what it speaks of. */
  readonly leaders: readonly (readonly [Pixel, Pixel])[];
}

/** The train to scale: end-on wheels with their true teeth, shafts in the paper beside them. */
export function TrainPicture({ machine, train, fitted, motions, angle, label, leaders }: TrainPictureProps): ReactNode {
  const id = useId().replaceAll(':', '');
  const ordered = train.stations.toSorted((a, b) => b.outer - a.outer);
  const largest = ordered[0];
  const under = ordered.filter((station) => station !== largest && largest && Math.hypot(station.at[0] - largest.at[0], station.at[1] - largest.at[1]) < largest.outer);
  const beside = ordered.filter((station) => station !== largest && !under.includes(station));
  return (
    <svg className="train" role="img" aria-label={label} width={fitted.width} height={fitted.height} viewBox={`0 0 ${fitted.width} ${fitted.height}`}>
      <defs>
        <pattern id={`${id}-cut`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="5" /></pattern>
      </defs>
      <Axes train={train} fitted={fitted} />
      {beside.map((station) => <Clutches key={station.id} machine={machine} station={station} fitted={fitted} motions={motions} angle={angle} />)}
      {largest && <Wheels station={largest} fitted={fitted} motions={motions} angle={angle} only="largest" />}
      {largest && <Window largest={largest} under={under} fitted={fitted} />}
      {fitted.sides.map((side) => <SideView key={side.side.id} fitted={side} machine={machine} view={train.view} scale={fitted.scale} motions={motions} angle={angle} />)}
      {largest && <Wheels station={largest} fitted={fitted} motions={motions} angle={angle} only="rest" />}
      {[...under, ...beside].map((station) => <Wheels key={station.id} station={station} fitted={fitted} motions={motions} angle={angle} only="all" />)}
      {train.stations.map((station) => <Shaft key={station.id} machine={machine} station={station} fitted={fitted} motions={motions} angle={angle} hatch={`url(#${id}-cut)`} />)}
      {train.stations.map((station) => <Sense key={station.id} station={station} fitted={fitted} motions={motions} machine={machine} />)}
      <Dimensions train={train} fitted={fitted} />
      {leaders.map(([from, to]) => <g key={`${from.join()} ${to.join()}`} className="leader"><path d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} /><circle cx={to[0]} cy={to[1]} r="2.4" /></g>)}
    </svg>
  );
}

interface PartProps {
  readonly station: Station;
  readonly fitted: FittedTrain;
  readonly motions: ReadonlyMap<string, PaperMotion>;
  readonly angle: Live;
}

/** Turns with a shaft. */
export function Turning({ shaft, at, motions, angle, phase = 0, children }: { readonly shaft: string; readonly at: Pixel; readonly motions: ReadonlyMap<string, PaperMotion>; readonly angle: Live; readonly phase?: number; readonly children: ReactNode }): ReactNode {
  const motion = motions.get(shaft)!;
  const ref = useLive<SVGGElement>(angle, (element, value) => {
    const turned = ((phase + motion.way * motion.factor * value) * -180) / Math.PI;
    element.setAttribute('transform', `translate(${at[0].toFixed(2)} ${at[1].toFixed(2)}) rotate(${(turned % 360).toFixed(3)})`);
  });
  return <g ref={ref}>{children}</g>;
}

const classOf = (motion: PaperMotion | undefined): string => (motion?.condition === 'stands' ? 'stands' : motion?.condition === 'contradicted' ? 'jammed' : '');

function Wheels({ station, fitted, motions, angle, only }: PartProps & { readonly only: 'largest' | 'rest' | 'all' }): ReactNode {
  const at = fitted.stations.get(station.id)!;
  const wheels = only === 'largest' ? station.wheels.slice(0, 1) : only === 'rest' ? station.wheels.slice(1) : station.wheels;
  return wheels.map((wheel) => <WheelView key={wheel.id} wheel={wheel} at={at} scale={fitted.scale} motions={motions} angle={angle} />);
}

function WheelView({ wheel, at, scale, motions, angle }: { readonly wheel: Station['wheels'][number]; readonly at: Pixel; readonly scale: number; readonly motions: ReadonlyMap<string, PaperMotion>; readonly angle: Live }): ReactNode {
  const d = useMemo(() => wheel.outline && outlinePath(wheel.outline, scale), [wheel.outline, scale]);
  const web = webRadius(wheel, scale);
  return (
    <g className={`wheel ${wheel.kind} ${classOf(motions.get(wheel.shaft))}`}>
      <Turning shaft={wheel.shaft} at={at} motions={motions} angle={angle} phase={wheel.phase}>
        {wheel.kind === 'ring' && <circle className="edge" r={wheel.outer * scale} />}
        {d === undefined ? <circle className="absent" r={wheel.radius * scale} /> : <path className="edge" d={d} />}
        {wheel.kind !== 'ring' && web > 14 && <circle className="web" r={web} />}
        {/* A dot by which the eye follows the turning. */}
        {wheel.kind !== 'ring' && <circle className="dot" cx={web > 14 ? web - 5 : wheel.root * scale * 0.74} cy="0" r={web > 14 ? 2.6 : 1.3} />}
      </Turning>
      <circle className="pitch" cx={at[0]} cy={at[1]} r={wheel.radius * scale} />
    </g>
  );
}

/** Opens the largest wheel where others lie under it. */
function Window({ largest, under, fitted }: { readonly largest: Station; readonly under: readonly Station[]; readonly fitted: FittedTrain }): ReactNode {
  const at = fitted.stations.get(largest.id)!;
  const big = largest.wheels[0];
  const inner = largest.wheels[1];
  const path = useMemo(() => {
    // A second wheel nearly as large hides nothing behind the first.
    if (!big || (!inner && under.length === 0) || (under.length === 0 && inner!.outer > big.outer * 0.68)) return undefined;
    const circles = [
      ...(inner ? [[0, 0, inner.outer * fitted.scale] as const] : []),
      ...under.map((station) => {
        const spot = fitted.stations.get(station.id)!;
        return [spot[0] - at[0], spot[1] - at[1], Math.min(station.outer, ...station.wheels.slice(0, 1).map(({ outer }) => outer)) * fitted.scale] as const;
      }),
    ];
    return breakout(circles, webRadius(big, fitted.scale) - 2);
  }, [big, inner, under, fitted, at]);
  return path === undefined || big?.kind === 'ring' ? null : <path className="window" transform={`translate(${at[0]} ${at[1]})`} d={path} />;
}

/** The shaft, cut across; one-way clutches with their rollers. */
function Shaft({ machine, station, fitted, motions, angle, hatch }: PartProps & { readonly machine: Machine; readonly hatch: string }): ReactNode {
  const at = fitted.stations.get(station.id)!;
  const smallest = Math.min(...station.wheels.map(({ root }) => root), 6);
  const sizes = station.shafts.flatMap((shaft) => {
    const part = machine.shafts.get(shaft)?.part;
    const body = part === undefined ? undefined : machine.parts.get(machine.thingOf.get(part) ?? part);
    const size = body?.sizes['diameter'] ?? body?.sizes['outer'];
    return size === undefined ? [] : [size * 500];
  });
  const radius = Math.max(2, Math.min(sizes.length > 0 ? Math.max(...sizes) : smallest * 0.5, smallest * 0.72) * fitted.scale);
  const oneWay = [...machine.couplings.values()].find(({ kind, driver, driven }) => kind === 'one-way' && station.shafts.includes(driver.on) && station.shafts.includes(driven.on) && station.wheels.some(({ shaft }) => shaft === driver.on || shaft === driven.on));
  const room = (station.wheels.length > 1 ? station.wheels.at(-1)!.root : smallest) * fitted.scale;
  const roller = Math.min(3.4, radius * 0.34);
  const carrier = station.shafts.find((shaft) => motions.get(shaft)?.condition === 'turns') ?? station.shafts[0]!;
  return (
    <g className={`shaft ${classOf(motions.get(carrier))}`}>
      <circle className="body" cx={at[0]} cy={at[1]} r={radius} />
      <circle className="edge" cx={at[0]} cy={at[1]} r={radius} fill={hatch} />
      {oneWay && radius + roller * 2 + 3 < room && (
        <g className={`one-way ${classOf(motions.get(oneWay.driver.on))}`}>
          <circle className="fine" cx={at[0]} cy={at[1]} r={radius + roller * 2 + 2.5} />
          <Turning shaft={oneWay.driver.on} at={at} motions={motions} angle={angle}>
            {Array.from({ length: 10 }, (_, index) => <circle key={index} className="roller" cx={(radius + roller + 1) * Math.cos((index * Math.PI) / 5)} cy={(radius + roller + 1) * Math.sin((index * Math.PI) / 5)} r={roller} />)}
          </Turning>
        </g>
      )}
    </g>
  );
}

/** A centrifugal clutch round its pinion, as a phantom: the file does not give its size. Magnets of sensors sit on its bell. */
function Clutches({ machine, station, fitted, motions, angle }: PartProps & { readonly machine: Machine }): ReactNode {
  const at = fitted.stations.get(station.id)!;
  const clutch = [...machine.couplings.values()].find(({ kind, driver }) => kind === 'centrifugal-clutch' && station.shafts.includes(driver.on));
  const sensors = [...machine.sensors.values()].filter(({ reads, magnets }) => station.shafts.includes(reads) && magnets !== undefined && magnets <= 12);
  const radius = clutchRadius(station, fitted);
  // Without a bell nothing says where the magnets sit.
  if (!clutch) return null;
  return (
    <g className="clutch">
      <circle className={`phantom ${classOf(motions.get(clutch.driver.on))}`} cx={at[0]} cy={at[1]} r={radius + 8} />
      <circle className={`bell ${classOf(motions.get(clutch.driven.on))}`} cx={at[0]} cy={at[1]} r={radius} />
      {sensors.map((sensor) => (
        <Turning key={sensor.id} shaft={sensor.reads} at={at} motions={motions} angle={angle} phase={2.3}>
          {Array.from({ length: sensor.magnets! }, (_, index) => <rect key={index} className="magnet" x={radius - 3.5} y={-3.5} width="7" height="7" transform={`rotate(${(index * 360) / sensor.magnets!})`} />)}
        </Turning>
      ))}
    </g>
  );
}

const clutchRadius = (station: Station, fitted: FittedTrain): number => Math.max(26, Math.min(...station.wheels.map(({ outer }) => outer), 14) * fitted.scale * 2.1);

/** An arc in the action blue for each station that turns in a known way. */
function Sense({ station, fitted, motions, machine }: { readonly station: Station; readonly fitted: FittedTrain; readonly motions: ReadonlyMap<string, PaperMotion>; readonly machine: Machine }): ReactNode {
  const at = fitted.stations.get(station.id)!;
  const moving = station.shafts.find((shaft) => motions.get(shaft)?.condition === 'turns' && motions.get(shaft)?.known && station.wheels.some((wheel) => wheel.shaft === shaft)) ?? station.shafts.find((shaft) => motions.get(shaft)?.condition === 'turns' && motions.get(shaft)?.known);
  const motion = moving === undefined ? undefined : motions.get(moving)!;
  if (!motion) return null;
  const own = station.wheels.filter((wheel) => motions.get(wheel.shaft)?.condition === 'turns');
  const big = own[0];
  const clutch = [...machine.couplings.values()].some(({ kind, driver }) => kind === 'centrifugal-clutch' && station.shafts.includes(driver.on));
  const web = big ? webRadius(big, fitted.scale) : 0;
  const inside = !clutch && web > 40;
  const radius = clutch ? clutchRadius(station, fitted) + 15 : inside ? web - 12 : (big ? big.outer * fitted.scale : 8) + 7;
  const arc = clutch ? senseArc(at, radius, motion.way === 1, 150, 215) : inside ? senseArc(at, radius, motion.way === 1, 62, 118) : senseArc(at, radius, motion.way === 1, 120, 240);
  return <g className="sense"><path className="arc" d={arc.d} /><path className="head" d={arc.head} /></g>;
}

/** Chain lines through the centres. */
function Axes({ train, fitted }: { readonly train: PlacedTrain; readonly fitted: FittedTrain }): ReactNode {
  return train.stations.map((station) => {
    const [x, y] = fitted.stations.get(station.id)!;
    const reach = Math.max(16, station.outer * fitted.scale + 9);
    return <path key={station.id} className="axis" d={`M${x - reach} ${y}H${x + reach}M${x} ${y - reach}V${y + reach}`} />;
  });
}

/** Centre distances, where they follow from the file. */
function Dimensions({ train, fitted }: { readonly train: PlacedTrain; readonly fitted: FittedTrain }): ReactNode {
  const y = fitted.dimensionY;
  return train.ties.map((tie) => {
    if (tie.distance === undefined) return null;
    const [from, to] = [fitted.stations.get(tie.from)!, fitted.stations.get(tie.to)!].toSorted((a, b) => a[0] - b[0]) as [Pixel, Pixel];
    const gap = to[0] - from[0];
    if (gap < 12) return null;
    const tight = gap < 46;
    const middle = (from[0] + to[0]) / 2;
    return (
      <g key={tie.coupling.id} className="dimension">
        <path d={`M${from[0]} ${from[1]}V${y + 5}M${to[0]} ${to[1]}V${y + 5}`} />
        <path d={`M${from[0]} ${y}H${to[0]}${tie.shortened ? `M${middle - 5} ${y + 6}L${middle - 1} ${y - 6}M${middle + 1} ${y + 6}L${middle + 5} ${y - 6}` : ''}`} />
        <path className="head" d={`M${from[0]} ${y}l10 -2.5v5zM${to[0]} ${y}l-10 -2.5v5z`} />
        <text x={tight ? to[0] + 6 : middle} y={tight ? y + 4 : y - 5} textAnchor={tight ? 'start' : 'middle'}>{tie.distance.toFixed(2)}</text>
      </g>
    );
  });
}

/** Turns the train by hand: the wheel under the pointer follows it. Returned handlers go on the picture's frame. */
export function handTurning(train: PlacedTrain, fitted: FittedTrain, motions: ReadonlyMap<string, PaperMotion>, angle: Live): { readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void } {
  return {
    onPointerDown: (event) => {
      // A finger scrolls the page; it has the button.
      if (event.pointerType === 'touch' || event.button !== 0) return;
      const frame = event.currentTarget;
      const box = frame.getBoundingClientRect();
      const spot = (e: { readonly clientX: number; readonly clientY: number }): Pixel => [e.clientX - box.left, e.clientY - box.top];
      const start = spot(event);
      const found = train.stations
        .flatMap((station) => station.wheels.map((wheel) => ({ wheel, at: fitted.stations.get(station.id)! })))
        .filter(({ wheel, at }) => (motions.get(wheel.shaft)?.factor ?? 0) > 0 && Math.hypot(start[0] - at[0], start[1] - at[1]) <= wheel.outer * fitted.scale)
        .toSorted((a, b) => a.wheel.outer - b.wheel.outer)[0];
      if (!found) return;
      event.preventDefault();
      frame.setPointerCapture(event.pointerId);
      const { factor, way } = motions.get(found.wheel.shaft)!;
      const bearing = ([x, y]: Pixel): number => Math.atan2(found.at[1] - y, x - found.at[0]);
      let last = bearing(start);
      const move = (next: globalThis.PointerEvent): void => {
        const now = bearing(spot(next));
        const step = Math.atan2(Math.sin(now - last), Math.cos(now - last));
        last = now;
        angle.set(angle.get() + (step * way) / factor);
      };
      const end = (): void => {
        frame.removeEventListener('pointermove', move);
        frame.removeEventListener('pointerup', end);
        frame.removeEventListener('pointercancel', end);
      };
      frame.addEventListener('pointermove', move);
      frame.addEventListener('pointerup', end);
      frame.addEventListener('pointercancel', end);
    },
  };
}
