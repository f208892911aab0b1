import type { Crossing, FrequencyMap } from '@rotorwright/figures';
import { inUnit, showNumber, showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';
import { isNear, layMap, mapFrame, nearShare } from './map-layout.ts';

interface FrequencyMapProps {
  readonly map: FrequencyMap;
  readonly onOpen: (figure: string) => void;
  readonly onMargin: (margin: string) => void;
}

/** What shakes, rising with the rotor; what may answer, level; where they meet, a ring. Both scales are logarithmic. */
export function FrequencyMapPicture({ map, onOpen, onMargin }: FrequencyMapProps): ReactNode {
  const { x, y, least, most, frequencies, speeds, orders, modes } = layMap(map);
  const { left, top, width, height, right } = mapFrame;
  const inside = map.crossings.filter(({ speed }) => speed >= least && speed <= most);
  const near = inside.filter(isNear).length;
  return (
    <section className="area" id="shaking" tabIndex={-1} aria-label="What shakes, and what may answer">
      <div className="area-head"><h2>What shakes, and what may answer</h2><span className="small soft">frequency over the speed of the main rotor, both logarithmic</span></div>
      <div className="map-columns">
        <div className="table-frame" tabIndex={0} role="region" aria-label="Map of speeds and frequencies">
          <svg className="frequency-map" viewBox={`0 0 ${left + width + right} ${top + height + 40}`} role="img" aria-label={`${map.modes.length} natural frequencies against ${map.orders.length} orders: ${near} crossings within ${nearShare * 100} % of the speed that is flown. The table says the same.`}>
            {speeds.map((speed) => <g key={speed}><path className="grid-line" d={`M${x(speed)} ${top}V${top + height}`} /><text x={x(speed)} y={top + height + 16} textAnchor="middle">{showNumber(inUnit(speed, 'rpm'), { significant: 4 })}</text></g>)}
            {frequencies.map((hertz) => <g key={hertz}><path className="grid-line" d={`M${left} ${y(hertz)}H${left + width}`} /><text x={left - 6} y={y(hertz) + 4} textAnchor="end">{showNumber(hertz, { significant: 3 })}</text></g>)}
            <text x={left + width} y={top + height + 34} textAnchor="end">main rotor, rpm</text>
            <text x={2} y={top + 4}>Hz</text>
            <rect className="flown-band" x={x(map.flown * (1 - nearShare))} y={top} width={x(map.flown * (1 + nearShare)) - x(map.flown * (1 - nearShare))} height={height} />
            <path className="flown" d={`M${x(map.flown)} ${top}V${top + height}`} />
            {orders.map(({ order, from, to, label }) => (
              <g key={order.title}>
                <path className="order" d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`} />
                {label !== undefined && <text className="order-name" x={left + width + 6} y={label + 4}>{order.title}</text>}
              </g>
            ))}
            {modes.map(({ mode }) => <path key={mode.figure} className="mode" d={`M${left} ${y(mode.frequency)}H${left + width}`} />)}
            {modes.map(({ mode, label }) => <text key={mode.figure} className="mode-name" x={left + 6} y={label}>{mode.title}, {showNumber(mode.frequency, { significant: 3 })} Hz</text>)}
            {inside.map((crossing) => <circle key={`${crossing.mode.figure} ${crossing.order.title}`} className={isNear(crossing) ? 'crossing near' : 'crossing'} cx={x(crossing.speed)} cy={y(crossing.mode.frequency)} r={isNear(crossing) ? 6 : 4} />)}
            <path className="map-frame" d={`M${left} ${top}V${top + height}H${left + width}`} />
          </svg>
        </div>
        <CrossingTable crossings={map.crossings} flown={map.flown} onOpen={onOpen} onMargin={onMargin} />
      </div>
    </section>
  );
}

/** How far the speed that is flown must go to meet it, rounded down. */
const away = ({ share }: Crossing): string => `${Math.floor(100 * Math.abs(share - 1))} % ${share < 1 ? 'below' : 'above'}`;

function CrossingTable({ crossings, flown, onOpen, onMargin }: Omit<FrequencyMapProps, 'map'> & Pick<FrequencyMap, 'crossings' | 'flown'>): ReactNode {
  return (
    <table className="crossings">
      <caption className="small soft">Nearest first; flown at {showQuantity(flown, 'rpm', { significant: 4 })}</caption>
      <thead><tr><th scope="col">Answers</th><th scope="col">to</th><th scope="col">at rotor speed</th><th scope="col">left</th></tr></thead>
      <tbody>
        {crossings.slice(0, 8).map((crossing) => (
          <tr key={`${crossing.mode.figure} ${crossing.order.title}`}>
            <th scope="row"><button type="button" className="link" onClick={() => onOpen(crossing.mode.figure)}>{crossing.mode.title}</button></th>
            <td>{crossing.order.title}</td>
            <td className="speed"><StateMark state={isNear(crossing) ? 'tight' : 'holds'} size={13} label={isNear(crossing) ? 'near' : 'out of the way'} /> {showQuantity(crossing.speed, 'rpm', { significant: 4 })}</td>
            <td className="left"><button type="button" className="link" aria-label={`${away(crossing)}: margin of ${crossing.mode.title}`} onClick={() => onMargin(crossing.mode.margin)}>{away(crossing)}</button></td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
