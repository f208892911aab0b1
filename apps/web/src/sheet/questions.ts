import type { SheetEntry } from './sheets.ts';

/** What a question wants to know first: which stack, measurement, step, part, screw, or what a blade hangs on, or which bearing. */
export type Which = 'faced' | 'shimmed' | 'signed' | 'kept' | 'reached' | 'tightened' | 'pulled' | 'lasting';

/** What a builder asks, and where the answer stands. */
export interface Question {
  readonly title: string;
  /** A place: the sheet, and what follows its address (`#part-of-the-sheet`, `?query`, `/path`). Or what to choose first. */
  readonly at: readonly [sheet: SheetEntry['key'], place?: string] | Which;
  /** Other words by which somebody would look for it. */
  readonly words: string;
}

/** In the order of the job: build, prove, plan, set up, fly. */
export const questions: readonly Question[] = ([
  ['What do I do next, and what do I need for it?', ['bench'], 'step start go on'],
  ['What can I do tonight?', ['build', '#tonight'], 'forty minutes time tool missing heat gun'],
  ['How many evenings does it take, and what cures meanwhile?', ['build', '#evenings'], 'schedule plan days'],
  ['Is everything in the bags?', ['build', '#counting'], 'count kit missing damaged shopping buy'],
  ['Which way round does it go, and why?', 'faced', 'washer bearing facing tight loose bore one-way clutch seal'],
  ['Which shim gives the right end play?', 'shimmed', 'preload measure bag'],
  ['How tight is a screw, and does its thread hold?', 'tightened', 'torque preload aluminium plastic'],
  ['What keeps it in place, and what if that is missed?', 'kept', 'holds hold retention lock single point hazard miss'],
  ['I want it out: what comes apart, and what must be locked again?', 'reached', 'reach remove take pull get at way strip open dismantle order'],
  ['What is open, and may it fly?', ['build', '#before-it-flies'], 'undone unsigned safe ready'],
  ['Who signed it, when, with what, and who looked again?', 'signed', 'signature history second look locked log'],
  ['What does a change undo, and what do I buy?', ['change'], 'idea variant pinion blades swap compare'],
  ['Which gears give the rotor speed that I want?', ['drive', '#gear-choices'], 'pinion ratio rpm options buy'],
  ['Shorter blades turn faster: what becomes of the tail?', ['change'], 'longer blades variant tail gear'],
  ['Which way does it turn, and does that tighten its thread?', ['drive', '#directions'], 'sense direction loosen left hand'],
  ['What do I type into the governor?', ['controls', '#set-up'], 'ratio magnets sensor pulses flight controller travel direction'],
  ['How much power is left on a hot day up high?', ['rotor'], 'altitude temperature density reserve margin'],
  ['How long does the tank or the pack last?', ['rotor'], 'endurance fuel battery minutes'],
  ['Is the tail strong enough, and from which speed on?', ['rotor'], 'authority yaw weak'],
  ['How hard does a blade pull, and how much is left?', 'pulled', 'bolt grip thrust centrifugal load strength'],
  ['How long does a bearing last?', 'lasting', 'life hours wear'],
  ['When does a bearing want grease, and how much?', ['drive', '#bearing-care'], 'lubricate fresh interval'],
  ['Does anything shake in its own frequency?', ['margins', '#shaking'], 'resonance whirl boom tube critical vibration'],
  ['How long must each link be, and which arm hole?', ['controls', '#links'], 'rod length servo swashplate'],
  ['Where is the centre of mass, and what do I move?', ['balance'], 'gravity nose tail heavy ballast'],
  ['How do I balance blades, fan or head?', ['balance'], 'trial mass tracking unbalance'],
  ['How fast did it turn in a recording, and what is that noise?', ['listen'], 'sound phone microphone'],
  ['How warm must a housing be for its bearing to drop in?', ['drive', '#bearing-care'], 'heat oven temperature fit press'],
  ['How do I set a mesh that neither binds nor rattles?', ['drive', '#mesh-care'], 'backlash centre distance plastic'],
] as const).map(([title, at, words]) => ({ title, at, words }));
