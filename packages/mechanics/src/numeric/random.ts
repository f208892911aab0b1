/**
 * State of the sfc32 generator: three mixed words and a counter.
 *
 * @source C. Doty-Humphrey, PractRand: small fast chaotic generator, 32 bit (from memory)
 */
export type RandomState = Int32Array;

/**
 * One step of the generator.
 *
 * @param state  four words; changed
 * @returns      32 random bits, as a signed whole number
 */
export function nextBits(state: RandomState): number {
  const b = state[1]!;
  const c = state[2]!;
  const bits = (((state[0]! + b) | 0) + state[3]!) | 0;
  state[3] = state[3]! + 1;
  state[0] = b ^ (b >>> 9);
  state[1] = (c + (c << 3)) | 0;
  state[2] = (((c << 21) | (c >>> 11)) + bits) | 0;
  return bits;
}

/** The state that a seed stands for: twelve steps mix it, so that neighbouring seeds have nothing in common. */
export function randomState(seed: number): RandomState {
  const state = Int32Array.of(0, seed | 0, Math.floor(seed / 2 ** 32) | 0, 1);
  for (let step = 0; step < 12; step += 1) nextBits(state);
  return state;
}

/** Where the base layer of the ziggurat ends and the tail begins, and the area of one of its 128 layers under exp(−x²/2). */
const TAIL = 3.442619855899;
const AREA = 9.91256303526217e-3;

/**
 * Tables of the ziggurat for normal deviates, never changed.
 *   certain  below this size a draw of 24 bits lies inside its layer
 *   scale    from the draw to x
 *   density  exp(−x²/2) at the edge of each layer
 *
 * @source Marsaglia and Tsang, The ziggurat method for generating random variables, Journal of Statistical Software 5 (2000), no. 8 (from memory)
 */
export const normalLayers = layersOf(2 ** 23);

function layersOf(largest: number): { readonly certain: Int32Array; readonly scale: Float64Array; readonly density: Float64Array } {
  const certain = new Int32Array(128);
  const scale = new Float64Array(128);
  const density = new Float64Array(128);
  const base = AREA / Math.exp(-0.5 * TAIL * TAIL);
  certain[0] = (TAIL / base) * largest;
  scale[0] = base / largest;
  density[0] = 1;
  scale[127] = TAIL / largest;
  density[127] = Math.exp(-0.5 * TAIL * TAIL);
  let edge = TAIL;
  for (let layer = 126; layer >= 1; layer -= 1) {
    const next = Math.sqrt(-2 * Math.log(AREA / edge + Math.exp(-0.5 * edge * edge)));
    certain[layer + 1] = (next / edge) * largest;
    edge = next;
    density[layer] = Math.exp(-0.5 * edge * edge);
    scale[layer] = edge / largest;
  }
  return { certain, scale, density };
}

const unitBits = (state: RandomState): number => (nextBits(state) >>> 0) * 2 ** -32;

/**
 * A normal deviate from a draw that may lie outside its layer, in the wedge or in the tail: about one in forty.
 *
 * @param bits   the draw
 * @param state  changed where more draws are needed
 */
export function normalOutside(bits: number, state: RandomState): number {
  const { certain, scale, density } = normalLayers;
  let draw = bits >> 8;
  let layer = bits & 127;
  for (;;) {
    const x = draw * scale[layer]!;
    if (layer === 0) {
      let beyond: number;
      let height: number;
      do {
        beyond = -Math.log(unitBits(state) + 2 ** -33) / TAIL;
        height = -Math.log(unitBits(state) + 2 ** -33);
      } while (height + height < beyond * beyond);
      return draw > 0 ? TAIL + beyond : -TAIL - beyond;
    }
    if (density[layer]! + unitBits(state) * (density[layer - 1]! - density[layer]!) < Math.exp(-0.5 * x * x)) return x;
    const more = nextBits(state);
    layer = more & 127;
    draw = more >> 8;
    if (Math.abs(draw) < certain[layer]!) return draw * scale[layer]!;
  }
}
