import type { RefObject } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { RemarkWanted } from '../../../report/client/remarks-in-page.ts';

interface ReportRemarks {
  /** The moment chosen by ear in the report, s; another object each time, null before the first. */
  readonly wanted: { readonly at: number } | null;
  /** Tells the report that remarks are taken here; called when it has loaded. */
  readonly takesRemarks: () => void;
  /** Has the report play from a moment, s. */
  readonly playFrom: (moment: number) => void;
}

/** Remarks at moments that are chosen by ear in the report that a frame shows. */
export function useReportRemarks(frame: RefObject<HTMLIFrameElement | null>): ReportRemarks {
  const [wanted, setWanted] = useState<ReportRemarks['wanted']>(null);
  useEffect(() => {
    const hear = ({ data, source }: MessageEvent<Partial<RemarkWanted> | null>) => {
      if (source === null || source !== frame.current?.contentWindow) return;
      const at = data?.remarkAt;
      if (typeof at === 'number' && at >= 0) setWanted({ at });
    };
    addEventListener('message', hear);
    return () => removeEventListener('message', hear);
  }, []);
  const tell = (message: unknown) => frame.current?.contentWindow?.postMessage(message, '*');
  return {
    wanted,
    takesRemarks: () => tell('remarks'),
    playFrom: (moment) => {
      frame.current?.scrollIntoView({ block: 'start' });
      tell({ playFrom: moment });
    },
  };
}
