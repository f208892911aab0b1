import type { Machine, Measurement } from '@rotorwright/machine';
import { showNumber, showQuantity } from '@rotorwright/units';
import { present } from '../present.ts';
import { measureTime } from '../rules/index.ts';
import type { Step, StepWords } from '../step.ts';
import { capital, listed, moduleTitle, phraseOf, sentence, small, stackPhrase, thingWith, titleOf } from '../words/index.ts';
import type { Context, Draft } from './draft.ts';
import { formerId, stepParts } from './words-of-thing.ts';

/** Words for `with` that name no tool to lay out. */
const withoutTool = /^by |^hand$|^feel$|^eye$/u;

/** One thing to measure, or to feel. */
export function measureStep({ machine }: Context, written: Measurement): Draft {
  const measurement = withGap(machine, written);
  const { window, unit, shown, ask, wanted: feels, with: tool } = measurement;
  const facts: Draft['facts'] = {
    id: measurement.id,
    kind: 'measure',
    module: measurement.module,
    path: measurement.path,
    title: titleFor(machine, measurement),
    why: measurement.why,
    tip: measurement.tip,
    photo: measurement.photo,
    tools: tool === undefined || withoutTool.test(tool) ? [] : [capital(tool)],
    consumables: [],
    cure: 0,
    ticks: measurement.instances,
    measure: present<NonNullable<Step['measure']>>({ unit, shown, min: window?.min, max: window?.max, ask, wanted: feels, with: tool }),
    takes: measureTime,
    was: formerId(measurement),
  };
  const words = (): StepWords => ({
    action: lead(machine, measurement),
    actions: [...setting(machine, measurement), ...wanted(measurement)],
    caution: measurement.caution,
    parts: stepParts(machine, measurement.of === undefined || thingWith(machine, machine.thingOf.get(measurement.of) ?? measurement.of) === undefined ? [] : [measurement.of]),
  });
  return { facts, words };
}

/** The gap of a sensor stands once in the file, at the sensor. */
function withGap(machine: Machine, measurement: Measurement): Measurement {
  const gap = measurement.of === undefined ? undefined : machine.sensors.get(measurement.of)?.gap;
  if (measurement.quantity !== 'gap' || measurement.window !== undefined || gap === undefined) return measurement;
  return { ...measurement, window: gap, unit: 'm', shown: 'mm' };
}

function quantityWords(measurement: Measurement): string {
  // The name of a figure is no sentence; its title here is.
  if (measurement.quantity.includes(' ')) return small(titleOf(measurement));
  return measurement.quantity === 'end-play' ? 'end play' : measurement.quantity.replaceAll('-', ' ');
}

/** What it is of: a thing, a mesh or a sensor by its title. */
function targetWords(machine: Machine, measurement: Measurement): string | undefined {
  const { of } = measurement;
  if (of === undefined) return undefined;
  const id = machine.thingOf.get(of) ?? of;
  const stack = machine.stacks.get(id);
  if (stack !== undefined) return stackPhrase(machine, stack, measurement.module);
  if (thingWith(machine, id) !== undefined) return phraseOf(machine, of, measurement.module);
  const title = machine.couplings.get(of)?.title ?? machine.sensors.get(of)?.title;
  return title === undefined || title === '' ? of.replaceAll('-', ' ') : small(title).replaceAll('-', ' ');
}

function titleFor(machine: Machine, measurement: Measurement): string {
  // A key such as `play` or `free` says little; what is measured, and of what, says more.
  const own = titleOf(measurement);
  if (own !== capital(measurement.key.replaceAll('-', ' '))) return own;
  const target = targetWords(machine, measurement);
  return capital(target === undefined ? quantityWords(measurement) : `${quantityWords(measurement)}, ${target}`);
}

function lead(machine: Machine, measurement: Measurement): string {
  const target = targetWords(machine, measurement);
  const what = target === undefined ? `the ${quantityWords(measurement)}` : `the ${quantityWords(measurement)} of the ${target}`;
  const verb = measurement.ask === undefined && measurement.wanted === undefined ? 'Measure' : 'Feel';
  const how = measurement.with === undefined ? '' : withoutTool.test(measurement.with) ? `, ${measurement.with}` : `, with a ${measurement.with}`.replace(/ a ([aeiou])/u, ' an $1');
  const home = machine.modules.get(measurement.module);
  return sentence(`${verb} ${what}${how}.`, `${verb} ${what}.`, `${verb} the ${quantityWords(measurement)}${home === undefined ? '' : ` in the ${small(moduleTitle(home))}`}.`, `${verb} what this step names.`);
}

function setting(machine: Machine, measurement: Measurement): readonly string[] {
  const names = listed([...new Set(measurement.setBy.map((id) => `the ${phraseOf(machine, machine.thingOf.get(id) ?? id, measurement.module)}`))]);
  return names === '' ? [] : [sentence(`Adjust it by ${names} before the compound sets.`, 'Adjust it before the compound sets.')];
}

function wanted({ ask, window, wanted: feels, shown }: Measurement): readonly string[] {
  const asked = ask === undefined ? [] : [ask];
  if (feels !== undefined) return [...asked, `Wanted: ${feels.join(' or ')}.`];
  if (window === undefined) return ask === undefined ? ['Note the value; what is wanted comes from the figure of that name.'] : asked;
  return [...asked, `It must be ${windowWords(window, shown)}.`];
}

/** @param window SI */
function windowWords(window: NonNullable<Measurement['window']>, shown: string | undefined): string {
  const words = (value: number) => (shown === undefined ? showNumber(value) : showQuantity(value, shown));
  const { min, max } = window;
  if (min !== undefined && max !== undefined) return min === max ? words(min) : `from ${words(min)} to ${words(max)}`;
  if (min !== undefined) return `${words(min)} at least`;
  return max === undefined ? 'noted' : `${words(max)} at most`;
}
