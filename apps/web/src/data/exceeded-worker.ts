import { countMargins, figures, margins } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';

// One machine, one answer: how many of its margins are exceeded. Whoever started this worker ends it.
addEventListener('message', ({ data: machine }: MessageEvent<Machine>) => postMessage(countMargins(margins(figures(machine)).all).exceeded));
