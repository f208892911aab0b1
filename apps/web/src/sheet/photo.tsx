import { useEffect, useState, type ReactNode } from 'react';
import { useBoard } from '../data/index.ts';
import { Drawer } from './drawer.tsx';
import './photo.css';

export interface PhotoProps {
  /** Hex. */
  readonly sha256: string;
  /** What it shows, and when it was taken: "Photo of Retaining screw, 1 March 2026". */
  readonly title: string;
}

/** A photo of the book, small; pressed, it opens large. What has not been handed over yet is shown from this device. */
export function Photo({ sha256, title }: PhotoProps): ReactNode {
  const [large, setLarge] = useState(false);
  const { photosHere } = useBoard();
  const waiting = photosHere.get(sha256);
  const here = usePicture(waiting);
  const source = waiting ? here : `/api/photos/${sha256}`;
  return (
    <>
      <button type="button" className="photo" onClick={() => setLarge(true)}><img src={source} alt={title} loading="lazy" /></button>
      {large && <Drawer title={title} wide onClose={() => setLarge(false)}><img className="photo-large" src={source} alt={title} /></Drawer>}
    </>
  );
}

/** An address under which the page can show a picture that it holds; undefined until there is one. */
export function usePicture(picture: Blob | undefined): string | undefined {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    if (!picture) return undefined;
    const made = URL.createObjectURL(picture);
    setAddress(made);
    return () => {
      URL.revokeObjectURL(made);
      setAddress(undefined);
    };
  }, [picture]);
  return address;
}
