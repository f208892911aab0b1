/** The sheets of a machine, numbered through their groups. */
export interface SheetEntry {
  readonly key: 'drive' | 'rotor' | 'margins' | 'build' | 'bench' | 'holds' | 'change' | 'controls' | 'balance' | 'listen' | 'worksheet' | 'file';
  readonly number: number;
  readonly title: string;
  readonly group: 'know' | 'build' | 'set' | 'fly' | 'paper';
}

export const sheets: readonly SheetEntry[] = ([
  ['drive', 'Drive', 'know'],
  ['rotor', 'Rotor', 'know'],
  ['margins', 'Margins', 'know'],
  ['build', 'Build', 'build'],
  ['bench', 'Bench', 'build'],
  ['holds', 'Holds', 'build'],
  ['change', 'Change', 'build'],
  ['controls', 'Controls', 'set'],
  ['balance', 'Balance', 'set'],
  ['listen', 'Listen', 'fly'],
  ['worksheet', 'Worksheet', 'paper'],
  ['file', 'File', 'paper'],
] as const).map(([key, title, group], index) => ({ key, title, group, number: index + 1 }));

export const groups = [...new Set(sheets.map(({ group }) => group))];

export const machineAt = (id: string, sheet: SheetEntry['key'], rest = ''): string => `/m/${encodeURIComponent(id)}/${sheet}${rest}`;

/** A step on the bench. Step ids hold slashes. */
export const stepAt = (id: string, step: string): string => machineAt(id, 'bench', `/${encodeURIComponent(step)}`);

/** What keeps a part, joint or stack. */
export const keptAt = (id: string, thing: string): string => machineAt(id, 'holds', `?of=${encodeURIComponent(thing)}`);

/** The way in to a part, joint, stack or module, laid over the Build sheet. */
export const reachAt = (id: string, thing: string): string => machineAt(id, 'build', `?reach=${encodeURIComponent(thing)}`);

/** A line of the machine file. */
export const lineAt = (id: string, line: number): string => machineAt(id, 'file', `#L${line}`);

/** One entry tried on Change. */
export const changeAt = (id: string, entry: string, value: string): string => machineAt(id, 'change', `?idea=${encodeURIComponent(`${entry}=${value}`)}`);

/** Figures that stand on another sheet than Drive, by the beginnings of their names. */
const figuresOn = [
  ['rotor', /^(flown |hover-|blade-loading|tail-(?!rotor)|yaw-acceleration|power-|torque-needed|rotor-power|thrust-|climb-rate|endurance|range-speed|top-speed|fuel-flow|pack-|clutch-|governor-headroom|motor-heat|autorotation)/],
  ['controls', /^(link-length|pitch-|cyclic-|feathering-moment)/],
  ['balance', /^(centre-(?!distance)|mass-known|hanging-tilt|inertia-|shift |ballast |tip-gram|unbalance|spun-mass|track-turns)/],
] as const;

/** The sheet that a figure stands on. */
export const sheetOfFigure = (figure: string): SheetEntry['key'] => figuresOn.find(([, names]) => names.test(figure))?.[0] ?? 'drive';

/** The working of a figure, opened on the sheet that it stands on. */
export const figureAt = (id: string, figure: string): string => machineAt(id, sheetOfFigure(figure), `?figure=${encodeURIComponent(figure)}`);

export const worksheetAt = (id: string | undefined, calculation: string): string => (id === undefined ? `/worksheet/${calculation}` : machineAt(id, 'worksheet', `/${calculation}`));

/** Machine and sheet that an address names. */
export function placeOf(address: string): { readonly machine?: string; readonly sheet: SheetEntry['key'] | 'machines' | undefined } {
  const [first, id, key] = address.split('/').filter((part) => part !== '');
  if (first === undefined) return { sheet: 'machines' };
  if (first === 'worksheet') return { sheet: 'worksheet' };
  if (first !== 'm' || id === undefined) return { sheet: undefined };
  return { machine: decoded(id), sheet: sheets.find((sheet) => sheet.key === key)?.key };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
