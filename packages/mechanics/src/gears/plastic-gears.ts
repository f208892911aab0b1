/** Strengths of a plastic tooth that stands the given number of load cycles. */
export interface PlasticStrength {
  /** σ_FlimN [Pa]; zero and less: it stands none. */
  readonly root: number;
  /** σ_HlimN [Pa] */
  readonly flank: number;
}

/** Cycles and temperature [K] between which the curves were measured. */
export const plasticCurve = { cyclesFrom: 1e5, cyclesTo: 1e8, temperatureTo: 393.15 } as const;

const MPA = 1e6;
const ZERO_CELSIUS = 273.15;

/**
 * Fatigue strengths of POM teeth: σ_FlimN = 26 − 0.0025·ϑ² + 400·N^−0.2, σ_HlimN = 36 − 0.0012·ϑ² + (1000 − 0.025·ϑ²)·N^−0.21 [N/mm², ϑ in °C]
 *
 * @param temperature  of the tooth [K]
 * @param cycles       N, above 0
 * @throws RangeError unless both are positive
 * @source VDI 2736-2:2014, as public code quotes it; the flank curve is quoted there for other plastics too and is the less certain one
 * @example plasticStrength(293.15, 1e6).root / 1e6 // 50.23829377920772
 */
export function plasticStrength(temperature: number, cycles: number): PlasticStrength {
  if (!(temperature > 0 && cycles > 0 && Number.isFinite(temperature) && Number.isFinite(cycles))) throw new RangeError(`plasticStrength: temperature [K] and cycles must be positive, got ${temperature} and ${cycles}`);
  const square = (temperature - ZERO_CELSIUS) ** 2;
  return {
    root: (26 - 0.0025 * square + 400 * cycles ** -0.2) * MPA,
    flank: (36 - 0.0012 * square + (1000 - 0.025 * square) * cycles ** -0.21) * MPA,
  };
}

export type ToothPlace = 'root' | 'flank';
export type PlasticMate = 'steel' | 'plastic';

/** k_ϑ [K·(m/s)^0.75·mm^1.75/W] */
const heating: Readonly<Record<ToothPlace, Readonly<Record<PlasticMate, number>>>> = { root: { steel: 895, plastic: 2148 }, flank: { steel: 6300, plastic: 9000 } };

export interface HeatedTooth {
  /** [K] */
  readonly ambient: number;
  /** Lost in the mesh, mean while it runs [W]. */
  readonly lossPower: number;
  readonly place: ToothPlace;
  readonly mate: PlasticMate;
  /** b [m] */
  readonly faceWidth: number;
  readonly teeth: number;
  /** v_t [m/s] */
  readonly pitchLineSpeed: number;
  /** m_n [m] */
  readonly normalModule: number;
  /** Share of the time under load, above 0, at most 1. */
  readonly dutyCycle: number;
}

/**
 * Temperature of a plastic tooth in an open drive: ϑ = ϑ₀ + P_loss·k_ϑ/(b·z·(v_t·m_n)^0.75)·ED^0.64
 *
 * @returns [K]
 * @throws RangeError when an argument is out of range
 * @source VDI 2736-2:2014: coefficients as public code quotes them, exponent of the duty cycle from memory
 * @neglects a closed housing, and the cooling by a metal hub
 * @example plasticToothTemperature({ ambient: 298.15, lossPower: 2, place: 'root', mate: 'steel', faceWidth: 0.01, teeth: 60, pitchLineSpeed: 8, normalModule: 0.001, dutyCycle: 1 }) // 298.77716857637674
 */
export function plasticToothTemperature({ ambient, lossPower, place, mate, faceWidth, teeth, pitchLineSpeed, normalModule, dutyCycle }: HeatedTooth): number {
  for (const [name, value] of Object.entries({ ambient, faceWidth, teeth, pitchLineSpeed, normalModule })) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`plasticToothTemperature: ${name} must be positive, got ${value}`);
  }
  if (!(lossPower >= 0 && Number.isFinite(lossPower))) throw new RangeError(`plasticToothTemperature: lossPower [W] must be 0 or more, got ${lossPower}`);
  if (!(dutyCycle > 0 && dutyCycle <= 1)) throw new RangeError(`plasticToothTemperature: dutyCycle must be above 0 and at most 1, got ${dutyCycle}`);
  const resistance = heating[place][mate] / (faceWidth * 1e3 * teeth * (pitchLineSpeed * normalModule * 1e3) ** 0.75);
  return ambient + lossPower * resistance * dutyCycle ** 0.64;
}

/**
 * Tooth loss factor H_V = π(u + 1)/(z₁·u·cos β_b)·(1 − ε_α + ε₁² + ε₂²): the share of the power that the mesh loses is μ·H_V.
 *
 * @param tipRatio1  ε₁: contact ratio of the path from the pitch point to the tip of gear 1
 * @param tipRatio2  ε₂
 * @param baseHelixAngle  β_b [rad]
 * @source Ohlendorf; ISO/TR 14179-2 (both from memory); checked against a published calculation of a pair without helix
 * @example toothLossFactor(16, 24, 0.73415198100172, 0.7283767105690091, 0) // 0.1986347459
 */
export function toothLossFactor(teeth1: number, teeth2: number, tipRatio1: number, tipRatio2: number, baseHelixAngle: number): number {
  const ratio = teeth2 / teeth1;
  return ((Math.PI * (ratio + 1)) / (teeth2 * Math.cos(baseHelixAngle))) * (1 - tipRatio1 - tipRatio2 + tipRatio1 ** 2 + tipRatio2 ** 2);
}
