/**
 * The way through a field of scores, frame after frame, that gathers most when each step sideways is charged for.
 *
 * @param scores  `frames` rows of `width` numbers
 * @param charge  for each place that the way moves from one frame to the next
 * @returns       place in each frame
 */
export function bestWay(scores: Float32Array, width: number, charge: number): Int32Array {
  const frames = Math.floor(scores.length / width);
  const from = new Int32Array(frames * width);
  const best = Float64Array.from(scores.subarray(0, width));
  for (let frame = 1; frame < frames; frame += 1) {
    const row = frame * width;
    for (let place = 0; place < width; place += 1) from[row + place] = place;
    // The best that can come from the left, then from the right: each step of the way costs the same.
    for (let place = 1; place < width; place += 1) {
      if (best[place - 1]! - charge > best[place]!) {
        best[place] = best[place - 1]! - charge;
        from[row + place] = from[row + place - 1]!;
      }
    }
    for (let place = width - 2; place >= 0; place -= 1) {
      if (best[place + 1]! - charge > best[place]!) {
        best[place] = best[place + 1]! - charge;
        from[row + place] = from[row + place + 1]!;
      }
    }
    for (let place = 0; place < width; place += 1) best[place]! += scores[row + place]!;
  }
  const way = new Int32Array(frames);
  let end = 0;
  for (let place = 1; place < width; place += 1) if (best[place]! > best[end]!) end = place;
  for (let frame = frames - 1; frame >= 0; frame -= 1) {
    way[frame] = end;
    end = from[frame * width + end]!;
  }
  return way;
}
