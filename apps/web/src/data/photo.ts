import { sha256Hex } from '@rotorwright/build';

/** A picture as it goes to the server. */
export interface Photo {
  /** Hex: its name in the entry, and at the server. */
  readonly sha256: string;
  /** JPEG. */
  readonly picture: Blob;
}

/** Longest side, pixels: a thread and its compound can still be told apart, and an evening of photos fits on a tablet. */
const longest = 1600;
const quality = 0.85;
/** The server takes no more, bytes. */
const largest = 4 * 1024 * 1024;

/**
 * Makes a picture out of the camera, or out of a folder, small enough to be kept. What the camera wrote into the file
 * beside the picture (place, device) does not go along.
 *
 * @throws TypeError with a sentence for the builder when it is no picture that this browser can read
 */
export async function photoFrom(file: Blob): Promise<Photo> {
  const image = await createImageBitmap(file).catch((error: unknown) => {
    throw new TypeError('This file is no picture that this browser can read. Take a photo, or pick a JPEG or PNG.', { cause: error });
  });
  try {
    const canvas = document.createElement('canvas');
    const size = sizeWithin(image);
    canvas.width = size.width;
    canvas.height = size.height;
    canvas.getContext('2d')?.drawImage(image, 0, 0, size.width, size.height);
    const picture = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
    if (picture?.type !== 'image/jpeg') throw new TypeError('This browser cannot make a JPEG of the photo.');
    if (picture.size > largest) throw new TypeError('The photo is too large to be kept, even made smaller. Take another.');
    return { sha256: sha256Hex(new Uint8Array(await picture.arrayBuffer())), picture };
  } finally {
    image.close();
  }
}

/** Same shape, no larger than what is kept, in whole pixels; a small picture stays as it is. */
export function sizeWithin({ width, height }: { readonly width: number; readonly height: number }): { readonly width: number; readonly height: number } {
  const scale = Math.min(1, longest / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}
