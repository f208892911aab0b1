import { useCallback, useEffect, useRef, useState } from 'react';

/** Longer than this no recording helps, ms: it is then ended as if the button had been pressed. */
const longest = 60_000;

export interface Microphone {
  /** When it was started; undefined while nothing is recorded. */
  readonly since?: number;
  readonly start: () => void;
  readonly end: () => void;
}

/** Records from the microphone, with all that would embellish speech turned off. */
export function useMicrophone(onRecorded: (file: File) => void, onTrouble: (problem: string) => void): Microphone {
  const [since, setSince] = useState<number>();
  const recorder = useRef<MediaRecorder>(undefined);
  const release = (): void => recorder.current?.stream.getTracks().forEach((track) => track.stop());
  useEffect(() => () => {
    if (recorder.current) recorder.current.onstop = null;
    release();
  }, []);
  const end = useCallback((): void => {
    if (recorder.current?.state === 'recording') recorder.current.stop();
  }, []);
  const start = useCallback((): void => {
    // Browsers hand out the microphone over a safe connection only; elsewhere there is none at all.
    const devices = navigator.mediaDevices as MediaDevices | undefined;
    if (devices === undefined) return onTrouble('This browser gives no microphone to a page without a safe connection. Record with the phone’s own recorder, and open the file here.');
    void devices.getUserMedia({ audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false } }).then((stream) => {
      const own = new MediaRecorder(stream);
      const pieces: Blob[] = [];
      recorder.current = own;
      own.ondataavailable = ({ data }): void => void pieces.push(data);
      own.onstop = (): void => {
        release();
        setSince(undefined);
        onRecorded(new File(pieces, 'from the microphone', { type: own.mimeType }));
      };
      own.start();
      setSince(Date.now());
      setTimeout(end, longest);
    }).catch((error: unknown) => onTrouble(`The microphone cannot be used: ${error instanceof Error ? error.message : String(error)}.`));
  }, [onRecorded, onTrouble, end]);
  return { ...(since === undefined ? {} : { since }), start, end };
}
