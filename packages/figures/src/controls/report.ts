import type { FigureSet } from '../set/figure-set.ts';
import { armChoices, type ArmChoice } from './arm-holes.ts';
import { envelopeOf, tailEnvelope, type Envelope, type LeastTurn, type WorstLean } from './envelope.ts';
import type { Rod } from './layout.ts';
import { linkTable, subTrim, type LinkSetting, type SubTrim } from './link-table.ts';
import { servoLoads, tailLoad, type ServoLoad } from './loads.ts';
import { platePlay, tailPlay, type Play } from './play.ts';
import { plateOf } from './plate.ts';
import type { Plate } from './plate-types.ts';
import { qualityOf, tailQualityOf, type Quality, type TailQuality } from './quality.ts';
import { setUpSheet, type SetUpRow } from './set-up-sheet.ts';
import { tailOf, type Tail } from './tail.ts';

/** Everything that follows from servos, links and levers as the file places them. */
export interface ControlsReport {
  readonly plate?: PlateReport;
  readonly tail?: TailReport;
  /** Entries that would make the rest known, and why something cannot be computed although nothing is missing. */
  readonly missing: readonly string[];
  readonly stuck?: string;
  /** Every link with the length that it must have. */
  readonly links: readonly LinkSetting[];
  readonly trims: readonly SubTrim[];
  readonly arms: readonly ArmChoice[];
  readonly setUp: readonly SetUpRow[];
}

export interface PlateReport {
  readonly plate: Plate;
  readonly envelope: Envelope;
  /** Absent where something does not reach with the sticks at some end. */
  readonly quality?: Quality;
  readonly play: Play;
  /** Absent where the moment of the blades is not known. */
  readonly loads?: readonly ServoLoad[];
  /** How far the disc may lean back from square to the mast before a tip touches the boom, rad; only where the boom lies within the tips' reach. */
  readonly leanToBoom?: number;
}

export interface TailReport {
  readonly tail: Tail;
  readonly quality?: TailQuality;
  readonly leans: readonly WorstLean[];
  readonly toDeadCentre?: LeastTurn;
  readonly play: Play;
  /** Absent where the moment of the blades is not known, or the wanted pitch is out of reach. */
  readonly load?: ServoLoad;
}

export function controlsReport(set: FigureSet): ControlsReport {
  const { machine, drive } = set;
  const [laid, turned] = [plateOf(machine, drive), tailOf(machine)];
  const plate = laid && 'rest' in laid ? plateReport(set, laid) : undefined;
  const tail = turned && 'hub' in turned ? tailReport(set, turned) : undefined;
  const rods: readonly Rod[] = [...(plate ? [...plate.plate.rods, ...plate.plate.ends, plate.plate.pitchRod] : []), ...(tail ? [...tail.tail.rods, tail.tail.bladeRod] : [])];
  const links = linkTable(rods);
  // What half turns leave on the link straight from a servo is the servo's to make good.
  const trims = links.flatMap(({ link, wanted, set: set_ }) => {
    const servo = machine.controls.servos.get(link.from);
    const trim = servo && set_ !== undefined ? subTrim(servo, set_ - wanted) : undefined;
    return trim ? [trim] : [];
  });
  const missing = [laid, turned].flatMap((one) => (one && 'missing' in one ? one.missing : []));
  return {
    ...(plate ? { plate } : {}),
    ...(tail ? { tail } : {}),
    missing: [...new Set([...(laid || turned ? [] : ['controls.swashplate']), ...missing])],
    ...(laid && 'stuck' in laid ? { stuck: laid.stuck } : {}),
    links,
    trims,
    arms: armChoices(machine, drive),
    setUp: setUpSheet(set, plate?.plate, plate?.quality, tail?.tail, tail?.quality, trims),
  };
}

function plateReport(set: FigureSet, plate: Plate): PlateReport {
  const envelope = envelopeOf(plate);
  const quality = qualityOf(plate);
  const { rotor } = plate;
  const stiffness = featheringStiffness(set, plate);
  const radius = rotor.diameter === undefined ? undefined : rotor.diameter / 2;
  return {
    plate,
    envelope,
    ...(quality ? { quality } : {}),
    play: platePlay(plate),
    ...(stiffness === undefined ? {} : { loads: servoLoads(plate, stiffness, envelope.servoTurns) }),
    ...(radius === undefined || rotor.aboveBoom === undefined || rotor.aboveBoom >= radius ? {} : { leanToBoom: Math.asin(rotor.aboveBoom / radius) }),
  };
}

/** K of M = K·sin θ·cos θ for one blade, N·m, from its moment at the upper end of its pitch; undefined where that is not known. */
function featheringStiffness(set: FigureSet, { rotor, wanted }: Pick<Plate | Tail, 'rotor' | 'wanted'>): number | undefined {
  const moment = set.get(`feathering-moment ${rotor.id}`)?.value;
  const share = Math.sin(wanted.high) * Math.cos(wanted.high);
  return moment === undefined || Math.abs(share) < 1e-6 ? undefined : moment / share;
}

function tailReport(set: FigureSet, tail: Tail): TailReport {
  const quality = tailQualityOf(tail);
  const stiffness = featheringStiffness(set, tail);
  const load = quality && stiffness !== undefined && tailLoad(tail, quality, stiffness);
  const [low, high] = [quality?.low?.angle, quality?.high?.angle];
  const envelope = low === undefined || high === undefined ? undefined : tailEnvelope(tail, low, high);
  return { tail, ...(quality ? { quality } : {}), leans: envelope?.leans ?? [], ...(envelope?.toDeadCentre ? { toDeadCentre: envelope.toDeadCentre } : {}), play: tailPlay(tail), ...(load ? { load } : {}) };
}
