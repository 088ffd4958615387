import { IconCamera, IconX } from "@tabler/icons-react";
import { useEffect, useRef, useState } from "react";
import { useWords } from "../../app/words.tsx";

/** What a browser with the Shape Detection API has, as far as it is used here. */
interface Detector {
  readonly detect: (source: HTMLVideoElement) => Promise<readonly { readonly rawValue: string }[]>;
}
declare global {
  interface Window {
    readonly BarcodeDetector?: new (options: { readonly formats: readonly string[] }) => Detector;
  }
}

const FORMATS = ["qr_code", "data_matrix"];
const EVERY_MS = 150;

/** Reads labels by the camera, where the browser can. */
export function CameraScan({ scanned }: { readonly scanned: (text: string) => void }) {
  const { pick } = useWords().floor;
  const [on, setOn] = useState(false);
  if (window.BarcodeDetector === undefined || navigator.mediaDevices === undefined) return null;
  return (
    <div className="floor-camera">
      <button type="button" className="floor-plain" onClick={() => setOn(!on)}>
        {on ? <IconX size={26} /> : <IconCamera size={26} />} {on ? pick.cameraStop : pick.camera}
      </button>
      {on && (
        <Eye
          Detector={window.BarcodeDetector}
          scanned={(text) => {
            setOn(false);
            scanned(text);
          }}
        />
      )}
    </div>
  );
}

function Eye({
  Detector,
  scanned,
}: {
  readonly Detector: NonNullable<Window["BarcodeDetector"]>;
  readonly scanned: (text: string) => void;
}) {
  const { pick } = useWords().floor;
  const video = useRef<HTMLVideoElement>(null);
  const newest = useRef(scanned);
  newest.current = scanned;
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    const stop = new AbortController();
    void watch(video.current, new Detector({ formats: FORMATS }), stop.signal).then(
      (text) => text !== null && newest.current(text),
      () => setFailed(true),
    );
    return () => stop.abort();
  }, [Detector]);
  return (
    <>
      <p role="status">{failed ? pick.cameraFailed : pick.cameraHint}</p>
      <video ref={video} playsInline muted aria-label={pick.cameraHint} />
    </>
  );
}

/** Looks until something is read; null when it is called off. */
async function watch(
  video: HTMLVideoElement | null,
  detector: Detector,
  signal: AbortSignal,
): Promise<string | null> {
  if (video === null) return null;
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  try {
    video.srcObject = stream;
    await video.play();
    while (!signal.aborted) {
      const [code] = await detector.detect(video);
      if (code !== undefined) return code.rawValue;
      await new Promise((done) => setTimeout(done, EVERY_MS));
    }
    return null;
  } finally {
    for (const track of stream.getTracks()) track.stop();
  }
}
