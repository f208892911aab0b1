import { useRef, useState, type ReactNode } from 'react';
import type { Step } from '@rotorwright/build';
import type { StepEvent } from '@rotorwright/logbook';
import { photoFrom, type Photo as Taken } from '../../data/index.ts';
import { Photo, usePicture } from '../../sheet/index.ts';
import { photoTitle } from './photo-title.ts';

export interface PhotoButtonProps {
  readonly busy: boolean;
  readonly onPhoto: (photo: Taken) => void;
  /** Why there is no photo, in words. */
  readonly onTrouble: (words: string) => void;
}

/** Opens the camera, or on a desk the folder of pictures. */
export function PhotoButton({ busy, onPhoto, onTrouble }: PhotoButtonProps): ReactNode {
  const input = useRef<HTMLInputElement>(null);
  const [making, setMaking] = useState(false);
  const take = async (file: File): Promise<void> => {
    setMaking(true);
    try {
      onPhoto(await photoFrom(file));
    } catch (error) {
      onTrouble(error instanceof Error ? error.message : String(error));
    } finally {
      setMaking(false);
    }
  };
  return (
    <>
      <button type="button" disabled={busy || making} onClick={() => input.current?.click()}>{making ? 'Making it smaller …' : 'Photo'}</button>
      <input
        ref={input} type="file" accept="image/*" capture="environment" hidden aria-label="Photo of this step"
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          if (file) void take(file);
          // The same picture can be picked again.
          currentTarget.value = '';
        }}
      />
    </>
  );
}

export interface TakenPhotoProps {
  readonly photo: Taken;
  readonly title: string;
  readonly busy: boolean;
  readonly onNote: () => void;
  readonly onDrop: () => void;
}

/** A photo that goes with the next entry, unless it is noted alone or dropped. */
export function TakenPhoto({ photo, title, busy, onNote, onDrop }: TakenPhotoProps): ReactNode {
  const address = usePicture(photo.picture);
  return (
    <section className="bench-photo" aria-label="Photo taken">
      {address !== undefined && <img src={address} alt={`Photo of ${title}, not entered yet`} />}
      <p><b>Not entered yet.</b> It goes with your signature, look or note.</p>
      <div className="bench-feel">
        <button type="button" disabled={busy} onClick={onDrop}>Drop it</button>
        <button type="button" disabled={busy} onClick={onNote}>Enter it alone</button>
      </div>
    </section>
  );
}

/** The photos of a step's history, oldest first. */
export function StepPhotos({ step, history }: { readonly step: Step; readonly history: readonly StepEvent[] }): ReactNode {
  const photos = history.flatMap((event) => (event.photo === undefined ? [] : [{ ...event, photo: event.photo }]));
  if (photos.length === 0) return undefined;
  return (
    <section className="bench-photos" aria-label="Photos">
      {photos.map((event) => <Photo key={event.entry} sha256={event.photo} title={photoTitle(step, event)} />)}
    </section>
  );
}
