/**
 * What a lossy coder does to sound: of each band of each short frame only what stands out is kept, and nothing above its last band.
 *
 * @param keep  what lies further than this below the loudest of its band goes, dB
 * @param top   nothing is kept above, Hz
 */
export function coded(samples: Float64Array, rate: number, keep: number, top: number): Float64Array {
  const size = 1024;
  const window = Float64Array.from({ length: size }, (_, index) => Math.sin((Math.PI * (index + 0.5)) / size));
  const out = new Float64Array(samples.length);
  const real = new Float64Array(size);
  const imaginary = new Float64Array(size);
  for (let from = -size / 2; from < samples.length; from += size / 2) {
    for (let index = 0; index < size; index += 1) {
      real[index] = (samples[from + index] ?? 0) * window[index]!;
      imaginary[index] = 0;
    }
    fourier(real, imaginary);
    const highest = Math.min(size / 2, Math.floor((top * size) / rate));
    for (let band = 0; band <= size / 2; band += 16) {
      let most = 0;
      for (let bin = band; bin < band + 16 && bin <= size / 2; bin += 1) most = Math.max(most, real[bin]! ** 2 + imaginary[bin]! ** 2);
      for (let bin = band; bin < band + 16 && bin <= size / 2; bin += 1) {
        if (bin <= highest && real[bin]! ** 2 + imaginary[bin]! ** 2 >= most * 10 ** (-keep / 10)) continue;
        for (const each of [bin, (size - bin) % size]) real[each] = imaginary[each] = 0;
      }
    }
    fourier(imaginary, real);
    for (let index = 0; index < size; index += 1) if (from + index >= 0 && from + index < out.length) out[from + index]! += (real[index]! / size) * window[index]!;
  }
  return out;
}

/** Plain two-by-two transform in place; with real and imaginary part changed over it goes back, but for the size. */
function fourier(real: Float64Array, imaginary: Float64Array): void {
  const size = real.length;
  for (let i = 1, j = 0; i < size; i += 1) {
    let bit = size >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [real[i], real[j]] = [real[j]!, real[i]!];
      [imaginary[i], imaginary[j]] = [imaginary[j]!, imaginary[i]!];
    }
  }
  for (let span = 2; span <= size; span *= 2) {
    for (let k = 0; k < span / 2; k += 1) {
      const c = Math.cos((2 * Math.PI * k) / span);
      const s = -Math.sin((2 * Math.PI * k) / span);
      for (let at = k; at < size; at += span) {
        const to = at + span / 2;
        const re = real[to]! * c - imaginary[to]! * s;
        const im = real[to]! * s + imaginary[to]! * c;
        real[to] = real[at]! - re;
        imaginary[to] = imaginary[at]! - im;
        real[at]! += re;
        imaginary[at]! += im;
      }
    }
  }
}
