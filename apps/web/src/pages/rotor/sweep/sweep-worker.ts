import { prepareFigures } from '@rotorwright/figures';
import { COLUMNS, ROWS, sweepPlace, type Swept, type Sweeping } from './grid.ts';

/** Places computed before a word of them is said. */
const BATCH = 10;

// A stop is the end of this worker: whoever started it terminates it.
addEventListener('message', ({ data }: MessageEvent<Sweeping>) => {
  const reckon = prepareFigures(data.machine);
  let batch: Swept[] = [];
  for (let index = 0; index < COLUMNS * ROWS; index++) {
    batch.push(sweepPlace(reckon, data, index));
    if (batch.length === BATCH || index === COLUMNS * ROWS - 1) {
      postMessage(batch);
      batch = [];
    }
  }
});
