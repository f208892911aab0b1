import type { InstanceId, Part, Stack } from '@rotorwright/machine';
import { isBearing, partAt, type Members } from '../directions/members.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { Figure, FigureInput } from '../figure.ts';
import { materialOf } from '../margins/bench.ts';
import { entry, gather, type Builder } from '../set/builder.ts';

/** A bearing or one-way clutch: when it wants fresh grease, and how warm its housing must be for it to drop in. */
export interface BearingCare {
  readonly instance: InstanceId;
  readonly part: Part;
  /** Running time until fresh grease, and how much of it; absent where the rule does not fit, and then `note` says why. */
  readonly interval?: Figure;
  readonly grease?: Figure;
  /** Temperature of the housing, and how far that is from the lowest limit. */
  readonly warmth: Figure;
  readonly spare: Figure;
  readonly note?: string;
}

/** Cosine of the angle to upright within which a shaft stands: 45°. */
const UPRIGHT = Math.SQRT1_2;

const warmWhileRunning: FigureInput = { constant: 343.15, unit: 'K', source: 'chosen: 70 °C, for which the rule is made; feel the housing after a flight' };
const dropsIn: FigureInput = { constant: 5e-6, unit: 'm', source: 'chosen: five thousandths of a millimetre of play let it drop in (common practice, no source)' };

/** Every bearing of the stacks and of the press fits that say how they sit; copies of a module are alike, the first stands for all. */
export function bearingsOf({ machine }: Builder, isFirst: (thing: { readonly module: string }) => boolean): readonly { readonly instance: InstanceId; readonly part: Part; readonly stack?: Stack }[] {
  const inStacks = [...machine.stacks.values()].filter(isFirst).flatMap((stack) => stack.order.flatMap((item) => ('part' in item ? [{ instance: item.part, part: partAt(machine, item.part), stack }] : [])));
  const pressed = [...machine.joints.values()].filter((joint) => isFirst(joint) && joint.kind === 'press').flatMap(({ each }) => each.flatMap(({ holds }) => holds.map((instance) => ({ instance, part: partAt(machine, instance) }))));
  const seen = new Set<InstanceId>();
  return [...inStacks, ...pressed].flatMap((one) => {
    const { part, instance } = one;
    if (part === undefined || !isBearing(part) || seen.has(instance)) return [];
    seen.add(instance);
    return [{ ...one, part }];
  });
}

export function bearingCare(builder: Builder, members: Members, { instance, part, stack }: ReturnType<typeof bearingsOf>[number]): BearingCare {
  const turning = turnsWith(builder, members, part, stack);
  const fresh = 'note' in turning ? turning : greaseOf(builder, instance, part, turning.shaft);
  const { refused, ...warmth } = warmthOf(builder, instance, part, stack);
  const notes = [...refused, ...('note' in fresh ? [fresh.note] : [])];
  return { instance, part, ...fresh, ...warmth, ...(notes.length === 0 ? {} : { note: notes.join(' ') }) };
}

/** The shaft with which one of its rings turns while the other stands still; or why the rule for grease does not fit. */
function turnsWith({ get, machine }: Builder, { shaftOf }: Members, part: Part, stack: Stack | undefined): { readonly shaft: string } | { readonly note: string } {
  const anew = (why: string): { readonly note: string } => ({ note: `${why}: renew its grease at every strip.` });
  if (part.kind === 'one-way') return { note: 'A one-way clutch: oil or grease as its maker says.' };
  if (part.kind === 'angular-contact') return anew('The rule knows no angular contact');
  if (stack?.housing.some((each) => partAt(machine, each)?.kind === 'grip')) return anew('It swings and does not turn');
  // A ring of the swashplate is driven over a ball: the file says with what it turns.
  const shaftBy = (id: InstanceId): string | undefined => shaftOf.get(id) ?? shaftOf.get(partAt(machine, id)?.turnsWith ?? '');
  const spindle = stack && shaftBy(stack.spindle);
  const housing = stack?.housing.map(shaftBy).find((shaft) => shaft !== undefined);
  if (spindle !== undefined && housing !== undefined) return anew(spindle === housing ? 'Its rings turn together' : 'Both its rings turn');
  const shaft = spindle ?? housing;
  const speed = shaft === undefined ? undefined : get(`speed ${shaft}`);
  if (shaft === undefined || speed === undefined) return anew('No shaft is named that turns it');
  return speed.value === 0 ? anew('It stands still in flight') : { shaft };
}

function greaseOf(builder: Builder, instance: InstanceId, part: Part, shaft: string): Pick<BearingCare, 'interval' | 'grease'> {
  const { path, sizes } = part;
  const line = builder.machine.shafts.get(shaft);
  const stands = line?.axis === undefined ? undefined : Math.abs(line.axis[2]) >= UPRIGHT ? 'vertical' : 'horizontal';
  const { inputs, missing } = gather([
    ['kind', { entry: `${path}.kind`, value: part.kind, unit: '' }, ''],
    ...(['bore', 'outer', 'width'] as const).map((name) => [name, entry(`${path}.${name}`, sizes[name], 'm'), `${path}.${name}`] as const),
    ['speed', { figure: `speed ${shaft}` }, ''],
    ['shaft', stands === undefined ? undefined : { entry: `${line!.path}.axis`, value: stands, unit: '', as: 'from' }, `shafts.${shaft}.axis`],
  ]);
  const common = { calculation: 'bearing-grease', inputs: { ...inputs, temperature: warmWhileRunning }, missing };
  const title = inSentence(part.title);
  return {
    interval: builder.add({ ...common, name: `regrease ${instance}`, title: `Running time until fresh grease for ${title}`, unit: 's', shown: 'h', output: 'interval' }),
    grease: builder.add({ ...common, name: `grease-mass ${instance}`, title: `Fresh grease for ${title}`, unit: 'kg', shown: 'g', output: 'greaseMass' }),
  };
}

function warmthOf(builder: Builder, instance: InstanceId, part: Part, stack: Stack | undefined): Pick<BearingCare, 'warmth' | 'spare'> & { readonly refused: readonly string[] } {
  const { machine } = builder;
  const title = inSentence(part.title);
  const press = [...machine.joints.values()].find(({ kind, fit, each }) => kind === 'press' && fit !== undefined && each.some(({ holds }) => holds.includes(instance)));
  const hole: FigureInput | undefined = press ? { entry: `${press.path}.fit`, value: press.fit!, unit: '' } : part.housingFit === undefined ? undefined : { entry: `${part.path}.housing-fit`, value: part.housingFit, unit: '' };
  const nominal = entry(`${part.path}.outer`, part.sizes['outer'], 'm');
  const fit = gather([['nominal', nominal, `${part.path}.outer`], ['hole', hole, `${part.path}.housing-fit`]]);
  const interference = builder.add({
    name: `interference ${instance}`, title: `Largest interference of ${title} in its housing`, unit: 'm', shown: 'µm', calculation: 'iso-fit', output: 'interferenceMax',
    // The outer ring of a bearing is at most as large as its name, as a shaft of h is.
    inputs: { ...fit.inputs, shaft: { entry: `${part.path}.outer`, value: 'h5', unit: '', as: 'never above its nominal size:' } }, missing: fit.missing,
  });
  const seats = press ? press.each.flatMap(({ holds, seat }) => (holds.includes(instance) ? [seat] : [])) : (stack?.housing ?? []);
  const housings = seats.flatMap((seat) => partAt(machine, seat) ?? []);
  const made = housings.find(({ material }) => material !== undefined) ?? housings[0];
  const [expansion, wanted] = made ? materialOf(machine, made, 'expansion') : [undefined, stack ? `${stack.path}.housing` : `${part.path}.housing-fit`];
  const grown = gather([['housingMaterial', expansion && { record: { expansion } }, wanted]]);
  const common = {
    calculation: 'warm-to-fit', unit: 'K',
    inputs: { ...(nominal ? { nominal } : {}), interference: { figure: interference.name }, clearanceWanted: dropsIn, ...grown.inputs },
    missing: grown.missing,
  };
  return {
    refused: interference.value === undefined && interference.missing.length === 0 ? interference.warnings : [],
    warmth: builder.add({ ...common, name: `warm ${instance}`, title: `Housing warm enough for ${title} to drop in`, shown: '°C', output: 'housingTemperature' }),
    spare: builder.add({ ...common, name: `warm-spare ${instance}`, title: `From there to the least that must not get hot near ${title}: seal, grease, temper or lock`, shown: 'K', output: 'margin' }),
  };
}
