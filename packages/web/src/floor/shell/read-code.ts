/// <reference types="vite/client" />
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import wasm from "zxing-wasm/reader/zxing_reader.wasm?url";

// Ours, and not the copy in a public store that the library would ask for.
prepareZXingModule({
  overrides: {
    locateFile: (path: string, prefix: string) => (path.endsWith(".wasm") ? wasm : prefix + path),
  },
});

/** Width that a frame is looked at in: a label that fills a third of the picture has some 5 px a module. */
const WIDTH_PX = 800;

/** Has the reader fetched, so that it is on the device when the network is away. */
export const fetchReader = (): Promise<unknown> => fetch(wasm).catch(() => undefined);

/** What a label before the camera says; null when none is read. */
export async function readCode(video: HTMLVideoElement, canvas: HTMLCanvasElement): Promise<string | null> {
  const { videoWidth, videoHeight } = video;
  if (videoWidth === 0) return null;
  canvas.width = Math.min(WIDTH_PX, videoWidth);
  canvas.height = Math.round((canvas.width * videoHeight) / videoWidth);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (context === null) return null;
  context.drawImage(video, 0, 0, canvas.width, canvas.height);
  const frame = context.getImageData(0, 0, canvas.width, canvas.height);
  const [code] = await readBarcodes(frame, {
    formats: ["QRCode", "DataMatrix", "Code128"],
    maxNumberOfSymbols: 1,
  });
  return code?.text ?? null;
}
