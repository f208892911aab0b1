import type { DriveSolution, DriveState } from '@rotorwright/figures';
import { senseWords, turning } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { inUnit, showNumber } from '@rotorwright/units';
import { useEffect, useMemo, type ReactNode } from 'react';
import { StateWord } from '../../sheet/index.ts';
import { LiveText } from './live-text.tsx';
import type { Live } from './live.ts';
import { handTurning, TrainPicture } from './train-picture.tsx';
import { calloutsOf, placeCallouts, slotsFor, type PlacedCallout } from './train/callouts.ts';
import { fitTrain, narrow } from './train/fit.ts';
import { paperMotions } from './train/motion.ts';
import { placeTrain } from './train/place.ts';
import { useWidth } from '../../sheet/use-width.ts';

export interface PictureProps {
  readonly machine: Machine;
  readonly drive: DriveSolution;
  readonly state: DriveState;
  readonly speed: Live;
  readonly angle: Live;
  readonly factorOf: (shaft: string) => number | undefined;
  readonly onOpen: (figure: string) => void;
  /** Scale for the title block, and what is to be said of the drawing. */
  readonly onDrawn: (drawn: Drawn) => void;
  readonly turnButton: ReactNode;
}

/** Height of a row of callouts, px. */
const row = 88;
/** How far the phantom of a clutch and its arrow stand out beyond the pinion, px. */
const clutchOverhang = 44;
/** px for each mm of a screen: the reference pixel of CSS is 1/96 inch. */
const pixelsPerMillimetre = 96 / 25.4;

export interface Drawn {
  readonly scale: string;
  readonly note: string;
}

/** The picture with what is said round it. */
export function Picture({ machine, drive, state, speed, angle, factorOf, onOpen, onDrawn, turnButton }: PictureProps): ReactNode {
  const [frame, width] = useWidth<HTMLDivElement>();
  const train = useMemo(() => placeTrain(machine, drive.source?.shaft ?? drive.mainRotor?.on), [machine, drive]);
  const motions = useMemo(() => paperMotions(machine, train, drive.states.get(state)), [machine, train, drive, state]);
  const callouts = useMemo(() => calloutsOf(machine, train, motions, new Set([...(drive.states.get('driven')?.motions.values() ?? [])].filter(({ condition }) => condition === 'stands').map(({ shaft }) => shaft))), [machine, train, motions, drive]);
  const { fitted, placed } = useMemo(() => {
    const slots = slotsFor(callouts, width);
    const fit = fitTrain(train, { width: Math.max(width, 200), rowsAbove: slots.above, rowsBelow: slots.below, overhang: [...machine.couplings.values()].some(({ kind }) => kind === 'centrifugal-clutch') ? clutchOverhang : 0, row: width < narrow ? row + 12 : row });
    return { fitted: fit, placed: placeCallouts(callouts, train, fit, slots, width < narrow ? row + 12 : row) };
  }, [train, callouts, width]);
  const words = new Map(turning(machine, drive, state).map((each) => [each.shaft, each.sense ? short(each.sense) : each.words]));
  const scale = train.nominal ? 'none' : `${(fitted.scale / pixelsPerMillimetre).toPrecision(2)} : 1`;
  const hand = handTurning(train, fitted, motions, angle);
  const note = [
    `${train.view.words[0]!.toUpperCase()}${train.view.words.slice(1)}, nose ${train.view.words === 'seen from behind' ? 'away' : 'to the left'}.`,
    ...(train.nominal ? ['No scale: a module or pitch is missing.'] : []),
    ...(train.axesUnknown.length > 0 ? [`Axes not given, drawn end-on: ${train.axesUnknown.join(', ')}.`] : []),
    ...(train.loose.length > 0 ? [`Not drawn, because no mesh connects them: ${train.loose.map((shaft) => machine.shafts.get(shaft)!.title).join(', ')}.`] : []),
  ].join(' ');
  useEffect(() => onDrawn({ scale, note }), [onDrawn, scale, note]);
  return (
    <div className="picture-area">
      <div className="picture-frame" ref={frame} onPointerDown={hand.onPointerDown}>
        {width > 0 && (
          <>
            <TrainPicture machine={machine} train={train} fitted={fitted} motions={motions} angle={angle} leaders={placed.flatMap(({ leader }) => (leader ? [leader] : []))} label={`The drive train, ${train.view.words}: ${callouts.map(({ rows }) => rows.map(({ title }) => title).join(', ')).join('; ')}. The tables of shafts and meshes say the same.`} />
            {placed.map((each) => <CalloutView key={each.callout.id} placed={each} machine={machine} speed={speed} factorOf={factorOf} words={words} onOpen={onOpen} />)}
          </>
        )}
      </div>
      <p className="picture-foot small soft">
        {turnButton}
        {[...machine.sensors.values()].map((sensor) => {
          const seen = factorOf(sensor.reads);
          return sensor.magnets === undefined || seen === undefined ? null : <span key={sensor.id}>{sensor.title}, {sensor.magnets} {sensor.magnets === 1 ? 'magnet' : 'magnets'}: <button type="button" className="figure-link" onClick={() => onOpen(`sensor-frequency ${sensor.id}`)}><LiveText live={speed} text={(value) => `${showNumber((value * seen * sensor.magnets!) / (2 * Math.PI), { decimals: 1 })} Hz`} /></button></span>;
        })}
      </p>
    </div>
  );
}

/** "clockwise from above" is long beside a drawing that is seen from there. */
const short = (sense: ReturnType<typeof senseWords>): string => (sense.viewer === 'from above' ? sense.sense : sense.words);

function CalloutView({ placed, machine, speed, factorOf, words, onOpen }: { readonly placed: PlacedCallout; readonly machine: Machine; readonly speed: Live; readonly factorOf: (shaft: string) => number | undefined; readonly words: ReadonlyMap<string, string>; readonly onOpen: (figure: string) => void }): ReactNode {
  const { callout, left, top, width } = placed;
  const [first, ...rest] = callout.rows;
  const shaft = first?.shafts[0];
  const factor = shaft === undefined ? undefined : factorOf(shaft);
  const rotor = callout.rotors.map((id) => machine.rotors.get(id)!).find(({ diameter }) => diameter !== undefined);
  return (
    <div className="callout" style={{ left, top, width }}>
      <p className="callout-title">{first?.title}{callout.teeth.length > 0 && first?.condition !== 'stands' ? `, ${callout.teeth.join(' and ')} teeth` : ''}</p>
      {first?.condition === 'stands' ? <p className="callout-stands">stands</p>
        : factor === undefined || shaft === undefined ? <p><button type="button" className="figure-link" onClick={() => onOpen(`speed ${shaft}`)}><StateWord state="unknown" size={13}>{first?.condition === 'contradicted' ? 'jammed' : 'not known'}</StateWord></button></p>
          : <p className="callout-speed"><button type="button" className="figure-link" onClick={() => onOpen(`speed ${shaft}`)}><LiveText live={speed} text={(value) => showNumber(inUnit(value * factor, 'rpm'), { decimals: 0 })} /></button> rpm</p>}
      {factor !== undefined && first?.condition === 'turns' && (
        <p className="callout-more">
          <LiveText live={speed} text={(value) => `${showNumber((value * factor) / (2 * Math.PI), { decimals: 1 })} Hz`} />{shaft !== undefined && words.get(shaft) !== undefined && ` · ${words.get(shaft)}`}
        </p>
      )}
      {rotor && factor !== undefined && factor > 0 && <p className="callout-more">Ø {showNumber(inUnit(rotor.diameter!, 'mm'), { decimals: 0 })}, tip <LiveText live={speed} text={(value) => showNumber((value * factor * rotor.diameter!) / 2, { decimals: 1 })} /> m/s</p>}
      {rest.map((each) => <p key={each.title} className="callout-more">{each.title}: {each.condition === 'stands' ? 'stands' : each.condition === 'turns' ? <LiveText live={speed} text={(value) => `${showNumber(inUnit(value * (factorOf(each.shafts[0]!) ?? 0), 'rpm'), { decimals: 0 })} rpm`} /> : 'not known'}</p>)}
    </div>
  );
}
