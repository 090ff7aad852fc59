import { useEffect, useRef, useState } from 'react';
import { detailsOf, type OwnFiles, type ProblemDetails, type UploadStage, wasCalledOff } from '../api/api.ts';
import { keepFiles, type OpenedTrip } from '../api/kept.ts';

/** Sends the reader's files, one attempt at a time; it is called off when the reader wants, or leaves. */
export function useUpload(onOpened: (opened: OpenedTrip, files: OwnFiles) => void) {
  const [stage, setStage] = useState<UploadStage | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const upload = useRef<AbortController | null>(null);
  useEffect(() => () => upload.current?.abort(), []);
  const send = async (files: () => Promise<OwnFiles>) => {
    const control = new AbortController();
    upload.current = control;
    setProblem(null);
    setStage({ stage: 'sending', share: 0 });
    try {
      const own = await files();
      onOpened(await keepFiles(own, setStage, control.signal), own);
    } catch (error) {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
    } finally {
      setStage(null);
    }
  };
  return {
    stage,
    problem,
    send,
    callOff: () => upload.current?.abort(),
    forgetProblem: () => setProblem(null),
  };
}
