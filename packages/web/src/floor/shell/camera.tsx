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

const FORMATS = ["qr_code", "data_matrix", "code_128"];
const EVERY_MS = 150;

/** Reads a frame: the browser's own reader where it has one that works, else the one that comes with this page. */
type Reader = (video: HTMLVideoElement) => Promise<string | null>;

const loadOwn = () => import("./read-code.ts");

async function ownReader(): Promise<Reader> {
  const { readCode } = await loadOwn();
  const canvas = document.createElement("canvas");
  return (video) => readCode(video, canvas);
}

async function findReader(): Promise<Reader> {
  const { BarcodeDetector } = window;
  if (BarcodeDetector === undefined) return ownReader();
  const detector = new BarcodeDetector({ formats: FORMATS });
  let own: Reader | null = null;
  return async (video) => {
    if (own !== null) return own(video);
    try {
      return (await detector.detect(video))[0]?.rawValue ?? null;
    } catch {
      // Some browsers have the reader by name only.
      own = await ownReader();
      return own(video);
    }
  };
}

/** Reads labels by the camera, where there is one: browsers give it to pages over a secure connection only. */
export function CameraScan({ scanned }: { readonly scanned: (text: string) => void }) {
  const { pick } = useWords().floor;
  const [on, setOn] = useState(false);
  const hasCamera = navigator.mediaDevices !== undefined;
  useEffect(() => {
    // The reader has to be on the device before the network is away.
    if (hasCamera && window.BarcodeDetector === undefined)
      void loadOwn().then(
        ({ fetchReader }) => fetchReader(),
        () => undefined,
      );
  }, [hasCamera]);
  if (!hasCamera) return null;
  return (
    <div className="floor-camera">
      <button type="button" className="floor-plain" onClick={() => setOn(!on)}>
        {on ? <IconX size={26} /> : <IconCamera size={26} />} {on ? pick.cameraStop : pick.camera}
      </button>
      {on && (
        <Eye
          scanned={(text) => {
            setOn(false);
            scanned(text);
          }}
        />
      )}
    </div>
  );
}

function Eye({ scanned }: { readonly scanned: (text: string) => void }) {
  const { pick } = useWords().floor;
  const video = useRef<HTMLVideoElement>(null);
  const newest = useRef(scanned);
  newest.current = scanned;
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    const stop = new AbortController();
    void watch(video.current, stop.signal).then(
      (text) => text !== null && newest.current(text),
      () => setFailed(true),
    );
    return () => stop.abort();
  }, []);
  return (
    <>
      <p role="status">{failed ? pick.cameraFailed : pick.cameraHint}</p>
      <video ref={video} playsInline muted aria-label={pick.cameraHint} />
    </>
  );
}

/** Looks until something is read; null when it is called off. */
async function watch(video: HTMLVideoElement | null, signal: AbortSignal): Promise<string | null> {
  if (video === null) return null;
  const stream = await navigator.mediaDevices.getUserMedia({
    video: { facingMode: "environment", width: { ideal: 1280 } },
  });
  try {
    const read = await findReader();
    video.srcObject = stream;
    await video.play();
    while (!signal.aborted) {
      const text = await read(video);
      if (text !== null && text !== "") return text;
      await new Promise((done) => setTimeout(done, EVERY_MS));
    }
    return null;
  } finally {
    for (const track of stream.getTracks()) track.stop();
  }
}
