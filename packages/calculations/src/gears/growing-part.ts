import { material } from '@rotorwright/mechanics';
import { materialInput, propertyInputs, propertyOf } from '../materials.ts';

/** A part that grows with warmth, and with damp where its material swells. */
export function growingPartInput(title: string, example: string) {
  const input = materialInput(title, example, 'expansion');
  return { ...input, fields: { ...input.fields, swell: propertyInputs.swell } } as const;
}

interface GrowingPart {
  readonly name?: string;
  readonly expansion?: number;
  readonly swell?: number;
}

/**
 * How a part grows: by its length at assembly, warmed by `rise` [K], soaked or dry.
 *
 * @throws CalculationError when its expansion is neither given nor in the table
 */
export function growthOf(part: GrowingPart, path: string): (rise: number, soaked: boolean) => number {
  const expansion = propertyOf('expansion', part, path);
  const swell = part.swell ?? (part.name === undefined ? undefined : material(part.name)?.swell?.value) ?? 0;
  return (rise, soaked) => 1 + expansion * rise + (soaked ? swell : 0);
}
