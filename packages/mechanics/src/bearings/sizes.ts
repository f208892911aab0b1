/** A bearing of a maker's catalogue. Two makers rate one size differently: never mix their ratings. */
export interface BearingSize {
  readonly designation: string;
  readonly kind: 'deep-groove' | 'thrust-ball';
  /** m */
  readonly bore: number;
  /** m */
  readonly outer: number;
  /** Width, or height of a thrust bearing [m]. */
  readonly width: number;
  /** C [N] */
  readonly dynamicRating: number;
  /** C_0 [N] */
  readonly staticRating: number;
  /** Speeds that the maker prints [rad/s]: most with grease, most with oil, the reference speed of ISO 15312, the mechanical limit. */
  readonly greaseSpeed?: number;
  readonly oilSpeed?: number;
  readonly referenceSpeed?: number;
  readonly limitingSpeed?: number;
  readonly source: string;
  /** What else must be known before it is relied on. */
  readonly caution?: string;
}

const rpm = (value: number): number => (value * Math.PI) / 30;

/** Designation, bore, outer and width [mm], C and C_0 [N], most speed with grease and with oil [rpm]. */
type Row = readonly [designation: string, bore: number, outer: number, width: number, dynamicRating: number, staticRating: number, grease: number, oil?: number];

const deepGroove: readonly Row[] = [
  ['MR85', 5, 8, 2, 310, 120, 53_000, 63_000],
  ['MR105', 5, 10, 3, 430, 168, 50_000, 60_000],
  ['685', 5, 11, 3, 715, 281, 45_000, 53_000],
  ['MR115 ZZ', 5, 11, 4, 715, 276, 48_000],
  ['695', 5, 13, 4, 1080, 430, 43_000, 50_000],
  ['605', 5, 14, 5, 1330, 505, 40_000, 50_000],
  ['625', 5, 16, 5, 1730, 670, 36_000, 43_000],
  ['MR106', 6, 10, 2.5, 495, 218, 45_000, 53_000],
  ['MR126', 6, 12, 3, 715, 292, 43_000, 50_000],
  ['686A', 6, 13, 3.5, 1080, 440, 40_000, 50_000],
  ['696', 6, 15, 5, 1730, 670, 40_000, 45_000],
  ['626', 6, 19, 6, 2340, 885, 32_000, 40_000],
  ['687', 7, 14, 3.5, 1170, 510, 40_000, 45_000],
  ['607', 7, 19, 6, 2340, 885, 36_000, 43_000],
  ['MR128', 8, 12, 2.5, 545, 274, 40_000, 48_000],
  ['MR148', 8, 14, 3.5, 820, 385, 38_000, 45_000],
  ['688A', 8, 16, 4, 1610, 710, 36_000, 43_000],
  ['698', 8, 19, 6, 2240, 910, 36_000, 43_000],
  ['608', 8, 22, 7, 3300, 1370, 34_000, 40_000],
  ['689', 9, 17, 4, 1330, 665, 36_000, 43_000],
  ['609', 9, 24, 7, 3350, 1430, 32_000, 38_000],
  ['6800', 10, 19, 5, 1720, 840, 34_000, 40_000],
  ['6900', 10, 22, 6, 2700, 1270, 32_000, 38_000],
  ['6000', 10, 26, 8, 4550, 1970, 30_000, 36_000],
  ['6200', 10, 30, 9, 5100, 2390, 24_000, 30_000],
  ['6801', 12, 21, 5, 1920, 1040, 32_000, 38_000],
  ['6901', 12, 24, 6, 2890, 1460, 30_000, 36_000],
];

const thrust: readonly Row[] = [
  ['51100', 10, 24, 9, 10_100, 14_000, 6700, 10_000],
  ['51101', 12, 26, 9, 10_400, 15_400, 6700, 10_000],
  ['51102', 15, 28, 9, 10_600, 16_800, 6300, 9500],
  ['51103', 17, 30, 9, 11_400, 19_500, 6000, 9000],
  ['51104', 20, 35, 10, 15_100, 26_600, 5300, 8000],
];

const first = 'public catalogue of a bearing maker, tables of bearings';

const fromRow = (kind: BearingSize['kind']) => ([designation, bore, outer, width, dynamicRating, staticRating, grease, oil]: Row): BearingSize => ({
  designation, kind, bore: bore / 1000, outer: outer / 1000, width: width / 1000, dynamicRating, staticRating, greaseSpeed: rpm(grease), ...(oil === undefined ? {} : { oilSpeed: rpm(oil) }), source: first,
});

const second = 'public catalogue of a second bearing maker, page 231; sizes after ISO 15 (from memory)';

/** Designation, sizes [mm], ratings [N], reference speed and mechanical limit [rpm]. */
const ofSecondMaker = ([
  ['619/5', 5, 13, 4, 884, 340, 110_000, 67_000],
  ['618/8', 8, 16, 4, 1330, 570, 90_000, 56_000],
  ['608', 8, 22, 7, 3450, 1370, 75_000, 48_000],
  ['61800', 10, 19, 5, 1380, 585, 80_000, 48_000],
  ['61900', 10, 22, 6, 2080, 850, 75_000, 45_000],
  ['6000', 10, 26, 8, 4750, 1960, 67_000, 40_000],
] as const).map(([designation, bore, outer, width, dynamicRating, staticRating, reference, limit]): BearingSize => ({
  designation, kind: 'deep-groove', bore: bore / 1000, outer: outer / 1000, width: width / 1000, dynamicRating, staticRating, referenceSpeed: rpm(reference), limitingSpeed: rpm(limit), source: second,
}));

/** The seller prints ratings in kilograms-force. */
const kilogramForce = 9.80665;
const unsure = 'The ratings are one seller’s and unsure: two sizes carry the same ones, and other sellers print less, for F5-10M 950 N and 830 N.';

/** Designation, sizes [mm], ratings [kgf]. */
const miniatureThrust = ([
  ['F3-8M', 3, 8, 3.5, 88, 79],
  ['F4-9M', 4, 9, 4, 94, 118],
  ['F4-10M', 4, 10, 4, 82, 79],
  ['F5-10M', 5, 10, 4, 105, 118],
  ['F5-12M', 5, 12, 4, 93, 105],
  ['F6-12M', 6, 12, 4.5, 161, 187],
] as const).map(([designation, bore, outer, width, dynamic, still]): BearingSize => ({
  designation, kind: 'thrust-ball', bore: bore / 1000, outer: outer / 1000, width: width / 1000, dynamicRating: dynamic * kilogramForce, staticRating: still * kilogramForce,
  source: 'public table of a seller of thrust bearings', caution: unsure,
}));

/** Miniature, thin and usual small bearings, of a first and of a second maker's catalogue. */
export const bearingSizes: Readonly<Record<'first' | 'second', readonly BearingSize[]>> = {
  first: [...deepGroove.map(fromRow('deep-groove')), ...thrust.map(fromRow('thrust-ball')), ...miniatureThrust],
  second: ofSecondMaker,
};

/**
 * A bearing by its designation.
 *
 * @param maker  whose catalogue
 * @returns      undefined when the table has none of that name
 * @source each bearing names its own
 * @example bearingSize('608', 'first').dynamicRating // 3300
 */
export const bearingSize = (designation: string, maker: 'first' | 'second'): BearingSize | undefined => bearingSizes[maker].find((one) => one.designation === designation);
