/** Something that was done here and can be taken back. */
export type Act =
  | { readonly kind: 'edit'; readonly machine: string; readonly what: string; readonly before: string; readonly after: string }
  | { readonly kind: 'entry'; readonly machine: string; readonly what: string; readonly entryId: string };

/** How many acts are remembered for each machine. */
const remembered = 50;

export const withAct = (acts: readonly Act[], act: Act): readonly Act[] => [...acts, act].slice(-remembered);

export const lastAct = (acts: readonly Act[], machine: string): Act | undefined => acts.findLast((act) => act.machine === machine);

export const withoutAct = (acts: readonly Act[], act: Act): readonly Act[] => acts.filter((each) => each !== act);
