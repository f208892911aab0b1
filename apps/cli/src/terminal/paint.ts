/** Colour repeats what a word says already; without it nothing is lost. */
export type Ink = 'bold' | 'dim' | 'red' | 'yellow' | 'green';

const codes: Readonly<Record<Ink, readonly [number, number]>> = { bold: [1, 22], dim: [2, 22], red: [31, 39], yellow: [33, 39], green: [32, 39] };

export function painter(colour: boolean): (ink: Ink, text: string) => string {
  return (ink, text) => (colour ? `\u001B[${codes[ink][0]}m${text}\u001B[${codes[ink][1]}m` : text);
}
